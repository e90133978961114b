// Makes the pictures of docs/panel.md: node tests/panel/pictures.mjs, after sh tests/long.sh panel
// has fetched what it needs.
import path from "node:path";
import { Stage, browser, mayTell, root } from "./stage.mjs";
import { at, comeIn, open, scenes } from "./scenes.mjs";

const chromium = await browser();
const stage = await Stage.open("tests/panel/room.toml", [mayTell]);
// `where`: as somebody who was let in sees it.
const picture = async (name, size, colorScheme, where = null) => {
  const page = await open(chromium, stage.address, size, { colorScheme });
  if (where !== null) {
    await comeIn(page, stage);
    await page.goto(at(stage, where));
  }
  await page.screenshot({ path: path.join(root, "docs/panel", `${name}.png`) });
  await page.context().close();
};
try {
  for (const [name, reach] of Object.entries(scenes)) {
    await reach(stage, /162 L/);
    if (name === "running") await picture("wall", "wall", "dark");
    if (name === "ready") await picture("phone", "phone", "light");
    if (name === "leak") await picture("leak", "wall", "light", "/");
    if (name === "ready") await picture("tell", "wall", "light", "/tell");
  }
} finally {
  await stage.close();
  await chromium.close();
}
