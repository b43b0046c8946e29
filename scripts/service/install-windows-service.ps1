# Registers the published service with Windows; run as administrator from the published folder.
#   powershell -ExecutionPolicy Bypass -File install-windows-service.ps1 -Data C:\ProgramData\RebuildApi
param([string] $Data = "$env:ProgramData\RebuildApi")
$ErrorActionPreference = 'Stop'
New-Item -ItemType Directory -Force $Data | Out-Null
$program = Join-Path $PSScriptRoot 'RebuildApi.Server.exe'
New-Service -Name RebuildApi -DisplayName 'Rebuild API' -StartupType Automatic `
    -BinaryPathName "`"$program`" serve `"--Rebuild:DataFolder=$Data`""
# Tried again after a fault, three times a day.
sc.exe failure RebuildApi reset= 86400 actions= restart/5000/restart/5000/restart/60000 | Out-Null
Start-Service RebuildApi
