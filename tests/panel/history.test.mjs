// The page of curves in a real browser: read by key, enlarged, and there without script.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import fs from "node:fs";
import path from "node:path";
import { Stage, browser, eventually, root } from "./stage.mjs";
import { at, open } from "./scenes.mjs";
import { expectReadable } from "./readable.mjs";

const shots = path.join(root, "build/panel/shots");
let chromium;
let stage;
before(async () => {
  fs.mkdirSync(shots, { recursive: true });
  chromium = await browser();
  stage = await Stage.open();
  await stage.morning();
  for (const level of ["40", "55", "81"]) {
    stage.says("scullery/level", level);
    await new Promise((go) => setTimeout(go, 300)); // another moment of the journal's
  }
  await eventually(async () => /highest 162 L/.test(await stage.page("/history")), 15000, "the last reading");
});
after(async () => {
  await stage.close();
  await chromium.close();
});

test("the curve is read by key, in the household's units, and enlarged and back", async () => {
  const page = await open(chromium, at(stage, "/history"), "wall");
  const chart = page.getByRole("group", { name: "Lowest 60 L, highest 162 L." });
  await chart.waitFor();
  assert.equal(await page.locator(".chart svg").count(), 0, "the drawing has given way");
  const reading = page.getByRole("status");
  assert.match(await reading.textContent(), /^Point at the curve/);
  await chart.focus();
  await page.keyboard.press("End");
  assert.match(await reading.textContent(), /^\d\d-\d\d \d\d:\d\d: 162 L( \(.* – 162\))?$/);
  // Drawn over with the mouse it is enlarged: the hours below it are others.
  const below = () => page.locator(".dygraph-axis-label-x").allTextContents();
  const whole = await below();
  const box = await chart.boundingBox();
  await page.mouse.move(box.x + box.width * 0.3, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.5, box.y + box.height / 2, { steps: 5 });
  await page.mouse.up();
  assert.notDeepEqual(await below(), whole);
  await page.keyboard.press("Escape");
  assert.deepEqual(await below(), whole);
  await page.context().close();
});

test("it asks nobody else, complains of nothing, and is small on its way", async () => {
  const page = await (await chromium.newContext()).newPage();
  const said = [], answers = [];
  page.on("console", (message) => said.push(message.text()));
  page.on("response", (response) => answers.push(response));
  await page.goto(at(stage, "/history"), { waitUntil: "networkidle" });
  await page.locator(".readable canvas").first().waitFor();
  assert.deepEqual(said, []);
  assert.deepEqual(answers.map((it) => it.url()).filter((url) => !url.startsWith(stage.address)), []);
  let bytes = 0;
  for (const answer of answers) bytes += (await answer.request().sizes()).responseBodySize;
  console.log(`the history: ${bytes} bytes in ${answers.length} answers`);
  assert.ok(bytes > 30_000 && bytes <= 150 * 1024, `${bytes} bytes`);
  await page.context().close();
});

test("it stands without script, and can be read at every size", async () => {
  const still = await open(chromium, at(stage, "/history"), "wall", { javaScriptEnabled: false });
  await still.getByRole("img", { name: "Lowest 60 L, highest 162 L." }).waitFor();
  await still.context().close();
  for (const size of ["wall", "phone", "narrow"]) {
    for (const colorScheme of ["dark", "light"]) {
      const page = await open(chromium, at(stage, "/history"), size, { colorScheme });
      await page.locator(".readable canvas").first().waitFor();
      await page.screenshot({ path: path.join(shots, `curve-${size}-${colorScheme}.png`), fullPage: true });
      await expectReadable(page, `the history, ${size} ${colorScheme}`);
      await page.context().close();
    }
  }
});
