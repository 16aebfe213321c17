# Completions of patternforge for PowerShell. What may come next is told by the program itself.

Register-ArgumentCompleter -Native -CommandName patternforge -ScriptBlock {
    param($word, $command, $cursor)
    $program = $command.CommandElements[0].Extent
    $text = $command.Extent.Text.Substring($program.EndOffset - $command.Extent.StartOffset)
    $length = [Math]::Max(0, $cursor - $program.EndOffset)
    $before = if ($length -lt $text.Length) { $text.Substring(0, $length) } else { $text.PadRight($length) }
    foreach ($line in & $command.GetCommandName() '[suggest]' $before 2> $null) {
        $value, $about = $line -split "`t", 2
        if ($value -eq ':patterns' -or $value -eq ':folders') {
            [System.Management.Automation.CompletionCompleters]::CompleteFilename($word) | Where-Object {
                $_.ResultType -eq 'ProviderContainer' -or ($value -eq ':patterns' -and $_.ListItemText -like '*.pattern.md')
            }
        }
        else {
            $quoted = if ($value -match '\s') { "'" + ($value -replace "'", "''") + "'" } else { $value }
            if (-not $about) { $about = $value }
            [System.Management.Automation.CompletionResult]::new($quoted, $value, 'ParameterValue', $about)
        }
    }
}
