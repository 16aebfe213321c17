namespace PatternForge.Tests.Syntax;

/// <summary>Complete headers of invented designs, for tests that need every key.</summary>
internal static class Headers
{
    public const string Pullover = """
        ---
        title: Harbour pullover # a working title
        designer: Ida Example
        version: 1.2
        date: 2025-03-01
        craft: knitting
        level: intermediate
        level-reason: cables on every right-side row
        summary: >
          A boxy pullover, knitted
          from the top down.
        sizes:
          names: XS (S, M) (L, XL)
          fits: {bust: 76-81 (86-91, 96-101, 106-111, 117-122) cm}
          finished:
            bust: 91 (102, 112, 122, 132) cm
            length: 22½ (23, 23 1/2, 24, 24½)" # from the shoulder
          ease: 10 to 15 cm
        gauge:
          - name: main
            stitch: stockinette
            over: 10 x 10 cm
            stitches: 20
            rows: 28½
            tool: 4 mm
            state: blocked
          - 24 sts and 26 rows = 10 cm in cable pattern on 4 mm, blocked
        yarn:
          - name: "Quayside Wool"
            fibre: wool
            weight: DK (3)
            put-up: 100 g = 220 m
            needs: 950 (1050, 1150, 1250, 1350) m
            colours: [slate, foam]
            label: MC
            alternatives:
              - Quayside Cotton: cooler to wear
              - {name: Quayside Blend, note: machine washable, put-up: 50 g / 110 m}
        tools: ["4 mm circular needle, 80 cm", {text: cable needle, link: "https://example.com/cn"}]
        notions:
          - 4 markers
        stitches:
          C6F: sl 3 to cn, hold in front, k3, k3 from cn
          MB: {how: "(k1, yo, k1) in one st, turn, p3, turn, sk2p", full-name: make a bobble, takes: 1, makes: 1}
        abbreviations: [k, p, k2tog, "st(s)", RS, WS]
        numbers:
          cast-on: 92 (100, 108, 116, 124)
          yoke: 20 (21, 22, 23, 24) cm
        charts: {Chart A: 12}
        notes:
          - Slip the first stitch of every row.
        sample: {size: M, used: 430 g}
        photos:
          - {file: front.jpg, alt: "The pullover from the front"}
        videos: ["https://example.com/bobble"]
        links: {Blocking: "https://example.com/blocking"}
        contact: hello@example.com
        omit: [thanks, commissions]
        release: [us, large print]
        ---
        """;
}
