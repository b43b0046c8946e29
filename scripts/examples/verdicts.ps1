# The verdicts of a unit, one object for each, to sort and filter: ./verdicts.ps1 sl-1047 | Where-Object outcome -ne conforming
param([Parameter(Mandatory)][string]$Unit)
$ErrorActionPreference = 'Stop'
$url = if ($env:REBUILD_URL) { $env:REBUILD_URL } else { 'http://127.0.0.1:5280' }
$headers = @{}
if ($env:REBUILD_TOKEN) { $headers['Authorization'] = "Bearer $env:REBUILD_TOKEN" }
(Invoke-WebRequest -Uri "$url/v1/units/$Unit/verdicts.csv" -Headers $headers).Content | ConvertFrom-Csv | Where-Object { $_.PSObject.Properties.Value[0] -ne '#end' }
