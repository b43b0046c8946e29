# Takes a unit in. The key makes it safe to run again after a broken connection: the same unit is not taken in twice.
param([Parameter(Mandatory)][string]$Unit, [Parameter(Mandatory)][string]$Family, [Parameter(Mandatory)][string]$Tag, [Parameter(Mandatory)][string]$Person)
$ErrorActionPreference = 'Stop'
$url = if ($env:REBUILD_URL) { $env:REBUILD_URL } else { 'http://127.0.0.1:5280' }
$headers = @{ 'Idempotency-Key' = "intake-$Unit" }
if ($env:REBUILD_TOKEN) { $headers['Authorization'] = "Bearer $env:REBUILD_TOKEN" }
$body = @{ id = $Unit; family = $Family; tag = $Tag; person = $Person } | ConvertTo-Json
Invoke-RestMethod -Method Post -Uri "$url/v1/units" -Headers $headers -ContentType 'application/json; charset=utf-8' -Body $body | ConvertTo-Json -Depth 20
