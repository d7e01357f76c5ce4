import { afterAll, beforeAll, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { configurePublicUrl } from "@/lib/data/public-url";
import { type FrontDesk, openFrontDesk } from "@/tests/support/front-desk";
import { accepted, orderInput, received } from "@/tests/support/orders";

let lab: FrontDesk;

beforeAll(async () => {
  lab = await openFrontDesk();
});
afterAll(() => lab?.close());

const letters = () =>
  inScope({ kind: "laboratory" }, (tx) =>
    tx.mailMessage.findMany({
      orderBy: [{ enqueuedAt: "asc" }, { kind: "asc" }],
      select: { id: true, kind: true, recipient: true, subject: true, body: true },
    }),
  );

/** What was written by this act: the clock stands still, so that times tell nothing. */
const writtenBy = async (act: () => Promise<unknown>) => {
  const before = new Set((await letters()).map(({ id }) => id));
  await act();
  return (await letters()).filter(({ id }) => !before.has(id));
};

it("writes nothing from a process that people do not reach", async () => {
  await accepted(lab, orderInput(lab.northern.customerId));
  expect(await letters()).toEqual([]);
});

it("writes to whoever may order, once an act, and nothing confidential", async () => {
  configurePublicUrl("https://lab.example.org/");
  const number = await accepted(lab, orderInput(lab.northern.customerId));
  const tags = await received(lab, number, "SN-1\nSN-2\nSN-3");
  const written = await letters();
  expect(written.map(({ kind, recipient }) => [kind, recipient])).toEqual([
    ["order-accepted", "nora.north@example.org"],
    ["sensors-received", "nora.north@example.org"],
  ]);
  expect(written[1]?.subject).toBe(`3 sensors of your order ${number} arrived`);
  for (const { body } of written) {
    expect(body).toMatch(/^Dear Nora North,\n/);
    expect(body).toContain(`https://lab.example.org/portal/orders/${number}`);
    for (const secret of [...tags, "SN-1", "PO 4711", "Type K"]) expect(body).not.toContain(secret);
  }
});

it("writes to the address on record where nobody has an account", async () => {
  await inScope({ kind: "laboratory" }, (tx) =>
    tx.person.updateMany({ where: { customerId: lab.southern.customerId }, data: { active: false } }),
  );
  const written = await writtenBy(() => accepted(lab, orderInput(lab.southern.customerId)));
  expect(written.map(({ recipient, body }) => [recipient, body.split("\n")[0]])).toEqual([
    ["desk@example.org", "Dear Saul South,"],
  ]);
});

it("goes back with what it tells", async () => {
  const number = await accepted(lab, orderInput(lab.northern.customerId));
  // One serial number twice: all of it is refused.
  const written = await writtenBy(() =>
    expect(received(lab, number, "SN-9\nSN-9")).rejects.toThrow("Some fields need another look"),
  );
  expect(written).toEqual([]);
});
