import { strToU8 } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inScope, type Tx } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";
import { Refused } from "@/lib/domain/refusal";
import { execute } from "@/lib/operations/execute";
import { receiveSensorFile } from "@/lib/operations/sensor/receive-file";
import { intakePreviewView } from "@/lib/views/order/intake-preview";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { accepted, lineInput, orderInput } from "../../support/orders";
import { workbook } from "../../support/workbook";

let desk: FrontDesk;
beforeAll(async () => {
  desk = await openFrontDesk();
});
afterAll(() => desk.close());

const inLaboratory = <T>(work: (tx: Tx) => Promise<T>) => inScope({ kind: "laboratory" }, work);
const order = (quantity = "200") =>
  accepted(
    desk,
    orderInput(desk.northern.customerId, {
      lines: [
        { ...lineInput, quantity },
        { ...lineInput, typeLetter: "N", quantity: "3" },
      ],
    }),
  );
const receive = (orderNumber: string, bytes: Uint8Array, actor = desk.frontDesk) =>
  execute(
    receiveSensorFile,
    actor,
    { orderNumber, position: null, receivedOn: "2026-03-03", fileName: "list.csv", bytes },
    clock,
  );
const csv = (text: string) => strToU8(text);
const kept = (number: string) =>
  inLaboratory(async (tx) => {
    const { id } = await tx.order.findUniqueOrThrow({ where: { number }, select: { id: true } });
    const sensors = await tx.sensor.findMany({
      where: { line: { orderId: id } },
      include: { intake: true },
      orderBy: { tag: "asc" },
    });
    const custody = await tx.custodyEvent.findMany({
      where: { sensorId: { in: sensors.map((each) => each.id) } },
    });
    return { sensors, custody, files: await tx.intakeFile.findMany({ where: { orderId: id } }) };
  });

describe("a list of two hundred", () => {
  it("is taken in as one, kept by its hash, with verdicts and custody of each", async () => {
    const number = await order();
    const bytes = csv(
      `serial,type,loop ohm,wire mm,length mm\n${Array.from({ length: 200 }, (_, at) => `K-${at},K,${at === 7 ? 9 : 5},0.5,1000`).join("\n")}\n`,
    );
    const asked = { number, position: null, bytes };
    const preview = await intakePreviewView(desk.frontDesk, asked);
    expect(preview.count).toBe(200);
    expect(preview.groups[0]?.shared).toContainEqual({ label: "Wire", value: "0.5 mm" });
    expect(preview.groups[0]?.sensors[7]).toMatchObject({
      serial: "K-7",
      own: [{ label: "Loop resistance", value: "9 Ω" }],
      outside: [expect.stringContaining("expected 5.09 Ω ± 20 %")],
    });
    expect((await kept(number)).sensors).toHaveLength(0);
    const ends = csv(
      "serial,type,lot,roll,end\nE-1,K,L1,1,first\nE-2,K,L1,1,first\nE-3,K,L1,2,first\nE-4,K,L1,2,second\n",
    );
    const oneEnd = async () => (await intakePreviewView(desk.frontDesk, { ...asked, bytes: ends })).oneEnd;
    expect(await oneEnd()).toEqual([]);
    const ruled = (ruleSet: string) =>
      inLaboratory((tx) => tx.order.update({ where: { number }, data: { ruleSet } }));
    await ruled("audited-heat-treatment");
    expect(await oneEnd()).toEqual(["lot L1, roll 1: only its first end"]);
    await ruled("none");
    const { tags, deviating } = await receive(number, bytes);
    expect(tags).toHaveLength(200);
    expect(deviating).toEqual([tags[7]]);
    const { sensors, files, custody } = await kept(number);
    expect(sensors.map(({ serial }) => serial)).toEqual(Array.from({ length: 200 }, (_, at) => `K-${at}`));
    expect(sensors[7]?.intake).toMatchObject({
      condition: "deviates",
      conditionNote: expect.stringContaining("loop resistance 9 Ω"),
    });
    expect(JSON.parse(sensors[0]?.intake?.findings ?? "")[0]).toMatchObject({ verdict: "within" });
    expect(files).toMatchObject([{ rows: 200, fileName: "list.csv", receivedById: expect.any(String) }]);
    expect(Buffer.from(files[0]!.sha256).equals(Buffer.from(sha256(bytes)))).toBe(true);
    expect(custody).toHaveLength(200);
    expect((await auditSentences()).filter((each) => each.startsWith("sensor.list-taken-in"))).toEqual([
      expect.stringContaining(`took in 200 sensors of order ${number} from a list (CSV`),
    ]);
  });

  it("may come for several lines at once, as a spreadsheet too", async () => {
    const number = await order("2");
    await receive(
      number,
      workbook([
        ["serial", "type"],
        ["A", "K"],
        ["B", "N"],
        ["=1+1", "N"],
      ]),
    );
    const { sensors } = await kept(number);
    expect(sensors.map(({ serial, typeLetter }) => [serial, typeLetter])).toEqual([
      ["A", "K"],
      ["B", "N"],
      ["=1+1", "N"],
    ]);
  });
});

describe("nothing is stored of a list", () => {
  it.each([
    ["with one wrong cell", "serial,type,polarity\nA,K,ok\nB,K,sideways\n", "Row 3, column polarity"],
    [
      "with more than there is room for on its last line",
      "serial,type\nA,K\nB,N\nC,N\nD,N\nE,N\n",
      "orders 3",
    ],
    ["that is none", "\u0000", "binary"],
  ])("%s", async (_, text, said) => {
    const number = await order("2");
    const before = await auditSentences();
    const refusal = await refusalOf(receive(number, csv(text)));
    expect(refusal.code).toBe("invalid");
    expect(Object.values(refusal.fields ?? {}).join("\n")).toContain(said);
    expect(
      await refusalOf(intakePreviewView(desk.frontDesk, { number, position: null, bytes: csv(text) })),
    ).toEqual(refusal);
    expect(await kept(number)).toEqual({ sensors: [], custody: [], files: [] });
    expect(await auditSentences()).toEqual(before);
  });

  it("from those who take nothing in", async () => {
    const number = await order("2");
    for (const actor of [desk.signatory, desk.northern.actor])
      expect(await refusalOf(receive(number, csv("serial,type\nA,K\n"), actor))).toMatchObject({
        code: "not-permitted",
      });
  });

  it("that is received a second time: its sensors are here already", async () => {
    const number = await order("2");
    const bytes = csv("serial,type\nA,K\nB,N\n");
    await receive(number, bytes);
    const refusal = await refusalOf(receive(number, bytes));
    expect(Object.values(refusal.fields ?? {})[0]).toContain("“A”, is already here as T-");
    expect((await kept(number)).files).toHaveLength(1);
  });

  it("that was spoilt on its way, whichever byte it was: all of it is there or none", async () => {
    const number = await order("40");
    const whole = csv(
      `serial,type,loop ohm\n${Array.from({ length: 9 }, (_, at) => `S${at},K,${at + 1}`).join("\n")}\n`,
    );
    const zipped = workbook([
      ["serial", "type"],
      ["X1", "K"],
      ["X2", "K"],
    ]);
    let [before, taken] = [0, 0];
    for (const bytes of [whole, zipped])
      for (let step = 1; step <= 12; step += 1) {
        const spoilt = Uint8Array.from(bytes);
        const at = Math.floor((step * bytes.length) / 13);
        spoilt[at] = (spoilt[at] ?? 0) ^ (step * 7);
        const done = await receive(number, spoilt).then(
          ({ tags }) => tags.length,
          (error: unknown) => (error instanceof Refused ? 0 : Promise.reject(error)),
        );
        const now = await kept(number);
        expect(now.sensors.length).toBe(before + done);
        taken += done > 0 ? 1 : 0;
        expect(now.files).toHaveLength(taken);
        before = now.sensors.length;
      }
    expect(taken).toBeLessThan(24);
  });
});
