# Read by tests/long.sh: what the tests of the page need, beside the program.

# fetch_panel_tools: two libraries for tests, from npm, into build/panel.
fetch_panel_tools() {
  mkdir -p build/panel && cp tests/panel/package.json build/panel/ &&
    npm install --prefix build/panel --no-audit --no-fund --no-package-lock >/dev/null
}
