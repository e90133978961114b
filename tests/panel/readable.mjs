// What must hold of every page, at every size, in both colours.
import assert from "node:assert/strict";
import fs from "node:fs";
import path from "node:path";
import { root } from "./stage.mjs";
import { contrasts } from "./contrast.mjs";

const axe = fs.readFileSync(path.join(root, "build/panel/node_modules/axe-core/axe.min.js"), "utf8");

// What must hold whatever is shown. WCAG 2.2: 1.4.3 contrast, 1.4.10 reflow, 2.5.8 target size;
// the rest of what a program can judge is axe-core's.
export async function expectReadable(page, name) {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  assert.ok(wide <= 0, `${name}: ${wide} px to scroll sideways`);
  const texts = await page.evaluate(contrasts);
  assert.ok(texts.length > 5, `${name}: only ${texts.length} texts`);
  for (const { text, ratio, needed } of texts) {
    assert.ok(ratio >= needed, `${name}: "${text}" has ${ratio.toFixed(2)}, needs ${needed}`);
  }
  await page.evaluate(axe);
  const { violations } = await page.evaluate(() => axe.run({
    runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] }));
  assert.deepEqual(violations.map((v) => [v.id, v.nodes.map((n) => n.html)]), [], name);
  const small = await page.evaluate(() => [...document.querySelectorAll("a:not(.skip), button, input:not([type=hidden])")]
    .filter((a) => a.checkVisibility() && a.getBoundingClientRect().height < 24).map((a) => a.textContent));
  assert.deepEqual(small, [], `${name}: targets under 24 px`);
}
