import { token } from "./stage.mjs";

// The conditions in which the page is looked at, and the sizes.
export const sizes = { wall: [1024, 600], phone: [360, 740], narrow: [320, 640] };

// Each is reached from the one before.
export const scenes = {
  first_start: async () => {},
  not_yet: (stage) => stage.morning("30"),
  running: (stage) => stage.runs(),
  ready: (stage, ready) => stage.saysUntil({ level: "81", leak: "dry" }, ready),
  leak: (stage) => stage.saysUntil({ leak: "wet", booster: "OFF" },
    /(Water on the floor|Wasser am Boden)[^]*says that it is off/),
};

export async function open(browser, address, size, options = {}) {
  const [width, height] = sizes[size];
  const context = await browser.newContext({ viewport: { width, height }, ...options });
  const page = await context.newPage();
  await page.goto(address);
  return page;
}

export const at = (stage, where) => new URL(where, stage.address).href;

// By name and token, as a person does it.
export async function comeIn(page, stage) {
  await page.goto(at(stage, "/tell"));
  await page.locator("#who").fill("ann");
  await page.locator("#token").fill(token);
  await page.locator("main button").click();
  await page.waitForURL((url) => url.pathname === "/tell" || url.pathname === "/");
}
