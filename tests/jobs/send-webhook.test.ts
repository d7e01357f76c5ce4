import { createServer, type IncomingHttpHeaders, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { Webhook } from "standardwebhooks";
import { afterAll, afterEach, beforeAll, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { configureSeal } from "@/lib/data/seal";
import { httpCourier } from "@/lib/jobs/http-courier";
import { isOwnNetwork } from "@/lib/jobs/own-network";
import { execute } from "@/lib/operations/execute";
import { endWebhook, testWebhook } from "@/lib/operations/machine/change-webhook";
import { makeWebhook } from "@/lib/operations/machine/make-webhook";
import { type FrontDesk, openFrontDesk, refusalOf } from "@/tests/support/front-desk";
import { accepted, orderInput } from "@/tests/support/orders";
import { workOff } from "@/tests/support/work-off";

type Heard = { readonly headers: IncomingHttpHeaders; readonly body: string };

let lab: FrontDesk;
let server: Server;
let url: string;
let heard: Heard[] = [];
let status = 204;
// The verifier of the published specification holds messages to the true time.
const clock = () => new Date();

beforeAll(async () => {
  lab = await openFrontDesk();
  configureSeal("5e".repeat(32));
  server = createServer((request, response) => {
    const parts: Buffer[] = [];
    request.on("data", (part: Buffer) => parts.push(part));
    request.on("end", () => {
      heard.push({ headers: request.headers, body: Buffer.concat(parts).toString() });
      response.writeHead(status, { location: "http://example.org/" }).end();
    });
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/told`;
});
afterEach(() => {
  heard = [];
  status = 204;
});
afterAll(async () => {
  server?.close();
  await lab?.close();
});

const carrier = { kind: "file", carry: async () => "unused" } as const;
const work = (mayTellOwnNetwork = true) =>
  workOff(lab.database.jobsUrl, { carrier, publicUrl: "https://lab.example.org", clock, mayTellOwnNetwork });

const outcomes = () =>
  inScope({ kind: "laboratory" }, (tx) =>
    tx.webhookAttempt.findMany({ orderBy: { id: "asc" }, select: { outcome: true, detail: true } }),
  );

const made = (topics = ["order.accepted"]) =>
  execute(makeWebhook, lab.northern.actor, { url, topics }, clock);

it("tells of an accepted order once, signed as Standard Webhooks 1.0 says, and nothing confidential", async () => {
  const { id, secret } = await made();
  const number = await accepted(lab, orderInput(lab.northern.customerId));
  await work();
  expect(heard).toHaveLength(1);
  const [{ headers, body }] = heard as [Heard];
  // The verifier published with the specification, npm standardwebhooks 1.1.1.
  const verifier = new Webhook(secret);
  expect(verifier.verify(body, headers as Record<string, string>)).toEqual({
    topic: "order.accepted",
    order: number,
  });
  expect(() => verifier.verify(`${body} `, headers as Record<string, string>)).toThrow();
  expect(() => new Webhook(Buffer.alloc(32).toString("base64")).verify(body, headers as never)).toThrow();
  await work();
  expect(heard).toHaveLength(1);
  await execute(endWebhook, lab.northern.actor, { id }, clock);
});

it("is not told what it did not ask for, nor what happens to another customer", async () => {
  const { id } = await made(["certificate.issued"]);
  const other = await execute(makeWebhook, lab.southern.actor, { url, topics: ["order.accepted"] }, clock);
  await accepted(lab, orderInput(lab.northern.customerId));
  await work();
  expect(heard).toEqual([]);
  await execute(endWebhook, lab.northern.actor, { id }, clock);
  await execute(endWebhook, lab.southern.actor, { id: other.id }, clock);
});

it("keeps an attempt that failed, does not follow a redirection, and comes back", async () => {
  const { id } = await made();
  status = 302;
  await execute(testWebhook, lab.northern.actor, { id }, clock);
  await work();
  expect(heard).toHaveLength(1);
  expect((await outcomes()).at(-1)).toEqual({ outcome: "failed", detail: "answered 302" });
  await execute(endWebhook, lab.northern.actor, { id }, clock);
  expect(await refusalOf(execute(testWebhook, lab.northern.actor, { id }, clock))).toMatchObject({
    code: "wrong-state",
  });
});

it("reaches nothing in our own network unless the laboratory says so", async () => {
  const { id } = await made();
  await execute(testWebhook, lab.northern.actor, { id }, clock);
  await work(false);
  expect(heard).toEqual([]);
  expect((await outcomes()).at(-1)).toMatchObject({
    outcome: "failed",
    detail: "127.0.0.1 is not on the internet",
  });
  await execute(endWebhook, lab.northern.actor, { id }, clock);
  // By a name that leads here as well.
  const named = url.replace("127.0.0.1", "localhost");
  await expect(httpCourier(false)(named, {}, "{}")).rejects.toThrow("localhost leads to an address");
});

it("is nobody else's to end or test", async () => {
  const { id } = await made();
  for (const operation of [endWebhook, testWebhook])
    expect(await refusalOf(execute(operation, lab.southern.actor, { id }, clock))).toMatchObject({
      code: "not-found",
    });
  await execute(endWebhook, lab.northern.actor, { id }, clock);
});

// RFC 1918, 3927, 4193, 6598 and 6890; the IPv4-mapped form is RFC 4291, 2.5.5.2.
it.each([
  ["10.1.2.3", true],
  ["172.16.0.1", true],
  ["172.32.0.1", false],
  ["192.168.1.1", true],
  ["169.254.169.254", true],
  ["100.64.0.1", true],
  ["127.9.9.9", true],
  ["0.0.0.0", true],
  ["224.0.0.1", true],
  ["255.255.255.255", true],
  ["8.8.8.8", false],
  ["::1", true],
  ["::", true],
  ["::ffff:10.0.0.1", true],
  ["::ffff:8.8.8.8", false],
  ["fd00::1", true],
  ["fe80::1", true],
  ["2001:4860:4860::8888", false],
  ["not an address", true],
])("holds %s for our own network: %s", (address, isOwn) => {
  expect(isOwnNetwork(address)).toBe(isOwn);
});
