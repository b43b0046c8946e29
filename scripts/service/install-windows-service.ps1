# Registers the published service with Windows; run as administrator from the published folder.
#   powershell -ExecutionPolicy Bypass -File install-windows-service.ps1 -Data C:\ProgramData\RebuildApi
#Requires -RunAsAdministrator
param([string] $Data = "$env:ProgramData\RebuildApi")
$ErrorActionPreference = 'Stop'
$program = Join-Path $PSScriptRoot 'RebuildApi.Server.exe'
if (-not (Test-Path $program)) { throw "There is no $program; run this from the published folder." }
if (Get-Service RebuildApi -ErrorAction SilentlyContinue) { throw 'The service RebuildApi is registered already; remove it first with: sc.exe delete RebuildApi' }
# A backslash before the closing quote would take the quote for a letter.
$Data = [IO.Path]::GetFullPath($Data).TrimEnd('\')
New-Item -ItemType Directory -Force $Data | Out-Null
New-Service -Name RebuildApi -DisplayName 'Rebuild API' -StartupType Automatic `
    -BinaryPathName "`"$program`" serve `"--Rebuild:DataFolder=$Data`"" | Out-Null

function Invoke-Or-Stop([string] $what, [scriptblock] $work) {
    & $work | Out-Null
    if ($LASTEXITCODE -ne 0) { throw "$what failed with exit code $LASTEXITCODE." }
}

# An account of its own that may do no more than a user, and the records for it and for administrators alone: other users of this PC could else read them.
Invoke-Or-Stop 'sc.exe config' { sc.exe config RebuildApi obj= 'NT SERVICE\RebuildApi' }
Invoke-Or-Stop 'icacls' { icacls.exe $Data /inheritance:r /grant:r 'NT SERVICE\RebuildApi:(OI)(CI)F' '*S-1-5-18:(OI)(CI)F' '*S-1-5-32-544:(OI)(CI)F' }
# Tried again after a fault, three times a day.
Invoke-Or-Stop 'sc.exe failure' { sc.exe failure RebuildApi reset= 86400 actions= restart/5000/restart/5000/restart/60000 }
Start-Service RebuildApi
Write-Output "The service runs on http://127.0.0.1:5280. The token that its first start prints goes nowhere under Windows; issue yourself one:"
Write-Output "  & '$program' token add office --scope administrator --data '$Data'"
