# Gives the invoice lines that were written since the last time, one object for each. The cursor is kept in a file only after all lines were given.
param([Parameter(Mandatory)][string]$Place)
$ErrorActionPreference = 'Stop'
$url = if ($env:REBUILD_URL) { $env:REBUILD_URL } else { 'http://127.0.0.1:5280' }
$headers = @{}
if ($env:REBUILD_TOKEN) { $headers['Authorization'] = "Bearer $env:REBUILD_TOKEN" }
$next = "$url/v1/feeds/invoice-lines"
if (Test-Path $Place) { $next += '?cursor=' + (Get-Content $Place -Raw).Trim() }
$cursor = $null
while ($next) {
  $page = Invoke-RestMethod -Uri $next -Headers $headers
  $page.items
  if ($page.items) { $cursor = $page.items[-1].cursor }
  $next = $page.next
}
if ($cursor) { Set-Content -Path $Place -Value $cursor }
