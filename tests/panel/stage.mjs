// A private broker, the real daemon and a hand on the sensors, for tests of the page.
import { spawn, spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import fs from "node:fs";
import net from "node:net";
import os from "node:os";
import path from "node:path";

export const root = path.resolve(import.meta.dirname ?? path.dirname(new URL(import.meta.url).pathname), "../..");
// Whoever gives it may ask and tell, where the household's file names its file.
export const token = "an invented token of the basement";
export const mayTell = ["port = 0", 'port = 0\ntoken_file = "{folder}/token"'];
const program = path.join(root, "build/release/tidewright");

// Waits until `look` gives something true; throws if it does not within `bound` milliseconds.
export async function eventually(look, bound, what) {
  const end = performance.now() + bound;
  for (;;) {
    const found = await look();
    if (found) return found;
    if (performance.now() > end) throw new Error(`not within ${bound} ms: ${what}`);
    await new Promise((go) => setTimeout(go, 10));
  }
}

function freePort() {
  return new Promise((resolve) => {
    const server = net.createServer().listen(0, "127.0.0.1", () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}

function answers(port) {
  return new Promise((resolve) => {
    const socket = net.connect(port, "127.0.0.1", () => { socket.end(); resolve(true); });
    socket.on("error", () => resolve(false));
  });
}

export class Stage {
  // `household`: the text of a household's file. `change`: pairs to be replaced in it; {folder} is
  // then the stage's own, in which a file `token` holds `token`.
  static async open(household = "tests/panel/room.toml", change = []) {
    const stage = new Stage();
    stage.folder = fs.mkdtempSync(path.join(os.tmpdir(), "panel-"));
    let text = fs.readFileSync(path.join(root, household), "utf8");
    for (const [from, to] of change) {
      if (!text.includes(from)) throw new Error(`${household} has no ${from}`);
      text = text.replace(from, to);
    }
    text = text.replaceAll("{folder}", stage.folder);
    fs.writeFileSync(path.join(stage.folder, "token"), `${token}\n`);
    stage.file = path.join(stage.folder, "room.toml");
    fs.writeFileSync(stage.file, text);
    stage.brokerPort = await freePort();
    const settings = path.join(stage.folder, "broker.conf");
    fs.writeFileSync(settings, `listener ${stage.brokerPort} 127.0.0.1\nallow_anonymous true\n` +
      "set_tcp_nodelay true\npersistence false\nuser root\n");
    stage.broker = spawn("mosquitto", ["-c", settings], { stdio: "ignore" });
    await eventually(() => answers(stage.brokerPort), 5000, "a broker");
    await stage.start();
    return stage;
  }

  async start(port = 0) {
    if (port) fs.writeFileSync(this.file, fs.readFileSync(this.file, "utf8").replace(/^port = .*$/m, `port = ${port}`));
    const log = path.join(this.folder, "log");
    fs.writeFileSync(log, "");
    const out = fs.openSync(log, "a");
    this.daemon = spawn(program, ["run", "--config", this.file, "--broker",
      `mqtt://127.0.0.1:${this.brokerPort}`, "--state", path.join(this.folder, "state")],
      { stdio: ["ignore", out, out] });
    fs.closeSync(out);
    const line = await eventually(
      () => /The panel is at (http:\S+)\.\n/.exec(fs.readFileSync(log, "utf8")), 10000,
      "the panel's address in the log");
    this.address = line[1];
    await this.shows(/id="as-of">[^<]/); // the first report
  }

  // As a sensor says it.
  says(topic, payload) {
    const done = spawnSync("mosquitto_pub", ["-h", "127.0.0.1", "-p", `${this.brokerPort}`, "-q", "1",
      "-t", topic, "-m", payload]);
    if (done.status !== 0) throw new Error(`mosquitto_pub: ${done.stderr}`);
  }

  async shows(pattern, bound = 10000) {
    await eventually(async () => pattern.test(await this.page()), bound, `the page shows ${pattern}`);
  }
  // Says it again and again until the page shows it: what comes just after the daemon has
  // subscribed is of unknown age to it.
  async saysUntil(said, pattern) {
    await eventually(async () => {
      for (const [name, payload] of Object.entries(said)) this.says(`scullery/${name}`, payload);
      await new Promise((go) => setTimeout(go, 300));
      return pattern.test(await this.page());
    }, 20000, `the page shows ${pattern}`);
  }
  async page(path = "/") { return (await fetch(new URL(path, this.address))).text(); }

  // A quiet morning: everything has reported.
  async morning(level = "30") {
    await this.saysUntil({ leak: "dry", level, feed: "412", permeate: "11", between: "0",
      product: "0", concentrate: "0", temperature: "18.5", booster: "OFF" },
    />412 ppm<.*▷/s);
  }
  // The plug obeys, and the purifier runs.
  async runs() { await this.saysUntil({ booster: "ON" }, /class="moving"/); }

  kill() { this.daemon.kill("SIGKILL"); }

  async close() {
    for (const child of [this.daemon, this.broker]) {
      if (child.exitCode === null && child.signalCode === null) {
        child.kill("SIGKILL");
        await new Promise((gone) => child.on("exit", gone));
      }
    }
    fs.rmSync(this.folder, { recursive: true });
  }
}

// playwright-core lies in build/panel, where tests/long.sh has npm put it.
export async function browser() {
  const require = createRequire(path.join(root, "build/panel/package.json"));
  const { chromium } = require("playwright-core");
  return chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
}
