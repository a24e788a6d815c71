"""What axe-core finds wrong with a page for people who use a keyboard or a screen reader."""

from pathlib import Path

from playwright.sync_api import Page

SCRIPT = Path(__file__).parent / "vendor" / "axe.min.js"
_RUN = """async (within) => {
  const nonce = document.querySelector("script[nonce]")?.nonce;
  const plain = Document.prototype.createElement;
  Document.prototype.createElement = function (...words) {  // the policy holds for axe too
    const made = plain.apply(this, words);
    if (nonce && made.tagName === "STYLE") made.nonce = nonce;
    return made;
  };
  const found = await axe.run(within || document, {
    runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"],
    resultTypes: ["violations"],
  });
  Document.prototype.createElement = plain;
  return found.violations.map(each => [
    each.id, each.impact, each.nodes.map(node => node.html.slice(0, 160)).slice(0, 4),
  ]);
}"""
SERIOUS = ("serious", "critical")


def violations(page: Page, within: str = "") -> list[str]:
    """Return the serious violations of a page, or of what a selector finds, each in one line."""
    if not page.evaluate("typeof axe !== 'undefined'"):
        page.evaluate(SCRIPT.read_text(encoding="utf-8"))
    return [
        f"{rule} ({impact}): {nodes}"
        for rule, impact, nodes in page.evaluate(_RUN, within)
        if impact in SERIOUS
    ]
