// The line between the page and the daemon: what the page says when it breaks, and that nothing is
// lost when it is back.
import assert from "node:assert/strict";
import net from "node:net";
import { after, before, test } from "node:test";
import { Stage, browser, eventually } from "./stage.mjs";
import { open } from "./scenes.mjs";

let chromium;
before(async () => { chromium = await browser(); });
after(() => chromium.close());

const offlineMost = 30000;
const notice = (page) => page.locator("#offline");

async function expectOffline(page, began, bound) {
  await notice(page).waitFor({ state: "visible", timeout: bound });
  console.log(`offline notice after ${Math.round(performance.now() - began)} ms`);
  assert.match(await notice(page).innerText(), /^Offline since \d\d:\d\d\. /);
}

test("a killed daemon is told within 30 s, and a new one shows the present again", async () => {
  const stage = await Stage.open();
  try {
    await stage.morning();
    const page = await open(chromium, stage.address, "wall");
    await page.getByText("412 ppm").waitFor();
    const port = new URL(stage.address).port;
    stage.kill();
    await expectOffline(page, performance.now(), offlineMost);
    assert.match(await page.locator("main").innerText(), /412 ppm/, "what was seen last stays");
    await stage.start(port);
    await notice(page).waitFor({ state: "hidden", timeout: 30000 });
    await stage.saysUntil({ feed: "455" }, /455 ppm/);
    await page.getByText("455 ppm").waitFor();
  } finally {
    await stage.close();
  }
});

test("a daemon that hangs without a word is told within 30 s, too", async () => {
  const stage = await Stage.open();
  try {
    await stage.morning();
    const page = await open(chromium, stage.address, "phone");
    await page.getByText("412 ppm").waitFor();
    stage.daemon.kill("SIGSTOP");
    await expectOffline(page, performance.now(), offlineMost);
    stage.daemon.kill("SIGCONT");
    await notice(page).waitFor({ state: "hidden", timeout: 30000 });
  } finally {
    await stage.close();
  }
});

// Between the browser and the daemon: can be cut.
class Wire {
  constructor(port) {
    this.sockets = new Set();
    this.open = true;
    this.server = net.createServer((client) => {
      if (!this.open) return client.destroy();
      const daemon = net.connect(port, "127.0.0.1");
      for (const [one, other] of [[client, daemon], [daemon, client]]) {
        this.sockets.add(one);
        one.pipe(other);
        one.on("error", () => other.destroy());
        one.on("close", () => { this.sockets.delete(one); other.destroy(); });
      }
    });
  }
  async listen() {
    await new Promise((go) => this.server.listen(0, "127.0.0.1", go));
    return `http://127.0.0.1:${this.server.address().port}/`;
  }
  cut() {
    this.open = false;
    for (const socket of this.sockets) socket.destroy();
  }
  close() {
    this.cut();
    this.server.close();
  }
}

test("a page that was cut off lives through every change that it missed", async () => {
  const stage = await Stage.open();
  const wire = new Wire(new URL(stage.address).port);
  try {
    await stage.morning();
    const page = await open(chromium, await wire.listen(), "wall");
    await page.getByText("412 ppm").waitFor();
    await page.evaluate(() => {
      window.seen = [];
      new MutationObserver(() => window.seen.push(document.querySelector("#path .figure").textContent))
        .observe(document.querySelector("#path"), { childList: true, subtree: true });
    });
    stage.says("scullery/feed", "421");
    await page.getByText("421 ppm").waitFor();
    wire.cut();
    for (const ppm of ["422", "423", "424"]) await stage.saysUntil({ feed: ppm }, new RegExp(`${ppm} ppm`));
    wire.open = true;
    await page.getByText("424 ppm").waitFor({ timeout: 30000 });
    const seen = await page.evaluate(() => window.seen.filter((text, i, all) => text !== all[i - 1]));
    assert.deepEqual(seen.slice(-4), ["421 ppm", "422 ppm", "423 ppm", "424 ppm"]);
  } finally {
    wire.close();
    await stage.close();
  }
});
