// To ask and tell in a real browser: who may, what is pressed, held and typed, and what is then so.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import fs from "node:fs";
import path from "node:path";
import { Stage, browser, eventually, mayTell, root, token } from "./stage.mjs";
import { at, comeIn, open, scenes, sizes } from "./scenes.mjs";
import { expectReadable } from "./readable.mjs";

const shots = path.join(root, "build/panel/shots");
let chromium;
before(async () => {
  fs.mkdirSync(shots, { recursive: true });
  chromium = await browser();
});
after(() => chromium.close());

const german = [['"English"', '"Deutsch"']];
const room = "tests/panel/room.toml";
async function visit(stage, size, options = {}) {
  const page = await open(chromium, stage.address, size, options);
  await comeIn(page, stage);
  return page;
}

async function look(page, where, name) {
  await page.goto(where);
  await page.screenshot({ path: path.join(shots, `${name}.png`), fullPage: true });
  await expectReadable(page, name);
}

const dries = (stage) => stage.saysUntil({ leak: "dry", booster: "OFF" }, /Water on the floor/);
const acknowledge = (page) => page.locator('form[action="/tell/acknowledge/leak"] button');
const reset = (page) => page.locator('form[action="/tell/reset/leak"] button');
const came = (page) => page.locator("#came");

for (const [language, settings] of process.env.TIDEWRIGHT_SHORT ? [["English", []]] : [["English", []], ["Deutsch", german]]) {
  test(`every page to ask and tell can be read at every size, dark and light, in ${language}`, async () => {
    const stage = await Stage.open(room, [mayTell, ...settings]);
    try {
      await stage.morning();
      await scenes.leak(stage);
      for (const size of Object.keys(sizes)) {
        for (const colorScheme of ["dark", "light"]) {
          const named = (name) => `${name}-${language}-${size}-${colorScheme}`;
          const page = await open(chromium, stage.address, size, { colorScheme });
          await look(page, at(stage, "/"), named("answer_link"));
          await look(page, at(stage, "/tell"), named("way_in"));
          await comeIn(page, stage);
          await look(page, at(stage, "/"), named("answer"));
          await look(page, at(stage, "/tell"), named("tell"));
          await look(page, at(stage, "/tell/measured/product_tds"), named("measured"));
          await look(page, at(stage, "/tell/stop/make_water"), named("stop"));
          await page.locator("form.several button").nth(1).click();
          await came(page).waitFor();
          await page.screenshot({ path: path.join(shots, `${named("told")}.png`), fullPage: true });
          await expectReadable(page, named("told"));
          await page.context().close();
        }
      }
    } finally {
      await stage.close();
    }
  });
}

test("what is told is answered on the page, by keyboard alone", async () => {
  const stage = await Stage.open(room, [mayTell]);
  try {
    await stage.morning();
    const page = await open(chromium, at(stage, "/tell"), "wall");
    const focused = () => page.evaluate(() => {
      const here = document.activeElement;
      const { outlineStyle, outlineWidth } = getComputedStyle(here);
      return { tag: here.tagName, name: here.name || here.textContent, seen: outlineStyle !== "none" && parseFloat(outlineWidth) >= 2 };
    });
    // Walks on until something of that name has the focus, which must be seen all the way.
    const walkTo = async (name) => {
      for (let i = 0; i < 40; ++i) {
        await page.keyboard.press("Tab");
        const here = await focused();
        assert.ok(here.seen || here.tag === "BODY", `${here.name}: the focus is not seen`);
        if (here.name.startsWith(name)) return;
      }
      assert.fail(`${name} cannot be reached`);
    };
    await walkTo("who");
    await page.keyboard.type("ann");
    await walkTo("token");
    await page.keyboard.type(token);
    await page.keyboard.press("Enter");
    await page.getByText("You are ann.").waitFor();
    await walkTo("I have measured at the product water meter");
    await page.keyboard.press("Enter");
    await page.waitForURL("**/tell/measured/product_tds");
    await walkTo("value");
    await page.keyboard.type("0,4");
    await page.keyboard.press("Enter");
    await came(page).waitFor();
    assert.match(await came(page).innerText(), /Done\. I have measured at the product water meter .*: 0,4 ppm\./);
    assert.equal(await page.evaluate(() => document.activeElement.id), "came", "the page begins with it");
  } finally {
    await stage.close();
  }
});

test("an alarm is acknowledged and reset beside it; a slip resets nothing", async () => {
  const stage = await Stage.open(room, [mayTell]);
  try {
    await stage.morning();
    const page = await visit(stage, "wall");
    await page.goto(stage.address);
    assert.equal(await acknowledge(page).count(), 0);
    await scenes.leak(stage);
    await acknowledge(page).click(); // it came by itself
    await came(page).waitFor();
    assert.match(await came(page).innerText(), /Done\. Water on the floor: I have seen it\./);
    await page.screenshot({ path: path.join(shots, "seen-wall.png"), fullPage: true });
    assert.equal(await acknowledge(page).count(), 0);
    await dries(stage);
    await dries(stage);
    await reset(page).click();
    await reset(page).press("Enter");
    assert.equal(await page.locator("form.confirm").count(), 0);
    const heldBox = await reset(page).boundingBox();
    await page.mouse.move(heldBox.x + heldBox.width / 2, heldBox.y + heldBox.height / 2);
    await page.mouse.down();
    await page.getByText("nothing starts by itself").waitFor({ timeout: 10000 });
    await page.mouse.up();
    // The floor may still be drying, but nothing is latched any more.
    await eventually(async () => await reset(page).count() === 0, 10000, "nothing left to reset");
  } finally {
    await stage.close();
  }
});

test("a key that is held resets, too, and what cannot be reset says why", async () => {
  const stage = await Stage.open(room, [mayTell]);
  try {
    await stage.morning();
    const page = await visit(stage, "phone");
    await page.goto(stage.address);
    await scenes.leak(stage);
    await reset(page).waitFor();
    const hold = async (text) => {
      await reset(page).focus();
      await page.keyboard.down("Enter");
      await page.getByText(text).waitFor({ timeout: 10000 });
      await page.keyboard.up("Enter");
    };
    await hold("must report dry twice");
    await dries(stage);
    await dries(stage);
    await hold("nothing starts by itself");
  } finally {
    await stage.close();
  }
});

test("without script it works by plain forms, in one step more", async () => {
  const stage = await Stage.open(room, [mayTell]);
  try {
    await stage.morning();
    await scenes.leak(stage);
    const page = await visit(stage, "narrow", { javaScriptEnabled: false });
    assert.equal(new URL(page.url()).pathname, "/", "to the alarm that stands");
    await acknowledge(page).click();
    assert.match(await came(page).innerText(), /Done\./);
    await dries(stage);
    await dries(stage);
    await page.getByRole("button", { name: "Reset", exact: true }).click();
    assert.match(await came(page).innerText(), /One more step\..*Confirm it within 30 s\. Nothing has changed yet\./s);
    await page.screenshot({ path: path.join(shots, "one_more_step-narrow.png") });
    await page.getByRole("button", { name: "Yes, reset it", exact: true }).click();
    assert.match(await came(page).innerText(), /Done\..*nothing starts by itself/s);
  } finally {
    await stage.close();
  }
});

test("a button of an older occurrence acknowledges nothing", async () => {
  const stage = await Stage.open(room, [mayTell, ["[supply.salt]", '[rule.leak]\noff_delay = "0 s"\n\n[supply.salt]']]);
  try {
    await stage.morning();
    await scenes.leak(stage);
    const old = await visit(stage, "wall", { javaScriptEnabled: false });
    await old.goto(stage.address);
    const present = await visit(stage, "wall", { javaScriptEnabled: false });
    await eventually(async () => {
      stage.says("scullery/leak", "dry");
      return (await stage.page("/why")).includes(": over.");
    }, 30000, "the leak is over");
    await eventually(async () => {
      stage.says("scullery/leak", "wet");
      await present.goto(stage.address);
      return await present.locator('input[name="occurrence"][value="2"]').count() > 0;
    }, 30000, "a second occurrence");
    await acknowledge(old).click();
    assert.match(await came(old).innerText(), /older occurrence; the present one is 2/);
    await present.goto(stage.address);
    assert.equal(await acknowledge(present).count(), 1);
  } finally {
    await stage.close();
  }
});

test("a page from elsewhere cannot ask anything in somebody's name", async () => {
  const stage = await Stage.open(room, [mayTell]);
  try {
    await stage.morning();
    const page = await visit(stage, "wall");
    const cookies = await page.context().cookies();
    assert.deepEqual(cookies.map((c) => [c.name, c.httpOnly, c.sameSite]), [["tidewright_panel", true, "Strict"]]);
    // The same browser, a page by another name (its own origin): the form is refused, the cookie stays.
    const evil = await page.context().newPage();
    await evil.route("http://evil.example/", (route) => route.fulfill({ contentType: "text/html",
      body: `<form method="post" action="${at(stage, "/tell/cleaned")}"><button>win</button></form>` }));
    await evil.goto("http://evil.example/");
    const [answer] = await Promise.all([
      evil.waitForResponse((response) => response.url().endsWith("/tell/cleaned")),
      evil.getByText("win").click(),
    ]);
    assert.equal(answer.status(), 403);
    await page.goto(at(stage, "/tell"));
    assert.equal(await came(page).count(), 0);
  } finally {
    await stage.close();
  }
});
