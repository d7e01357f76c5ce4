import { expect, it } from "vitest";
import { hex } from "@/lib/data/hex";
import { sha256 } from "@/lib/data/sha256";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { certificateHtml } from "@/lib/documents/certificate-html/certificate-html";
import type { BundleMember, CertificateBundle } from "@/lib/domain/certificate/bundle";
import { composeBundle } from "@/lib/domain/certificate/compose-bundle";
import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { demand } from "@/lib/domain/refusal";
import { inventedParts } from "@/tests/support/certificate-parts";
import { measuredPoint } from "@/tests/support/evaluated-point";
import { pdfPages } from "@/tests/support/pdf-text";

const anneal = { celsius: 1100, hours: 2, manner: "in a tube furnace in air", performedOn: "2026-03-03" };
const pointsOf = (tag: string, error: number) =>
  [600, 1000].map((celsius) =>
    measuredPoint({ sensor: tag, setpoint: String(celsius), type: "K", celsius, error, rule: "guarded" }),
  );
const order = {
  ...inventedParts().order,
  temperatureUnit: "C" as const,
  setpoints: [
    { typed: "600", celsius: 600 },
    { typed: "1000", celsius: 1000 },
  ],
};

const member = (
  tag: string,
  kind: BundleMember["kind"],
  error: number,
  change: Parameters<typeof inventedParts>[0] = {},
): BundleMember => {
  const parts = inventedParts({ order, points: pointsOf(tag, error), ...change });
  return {
    kind,
    parts: { ...parts, sensor: { ...parts.sensor, tag, serial: `S-${tag}` }, set: kind },
    sensorId: tag,
    customerId: "c",
    runId: `run ${kind}`,
    evaluationId: `evaluation ${kind}`,
  };
};

const bundle = (
  members: readonly BundleMember[],
  change: Partial<CertificateBundle> = {},
): CertificateBundle => ({
  members,
  filedUnder: members.at(-1) as BundleMember,
  repeats: [],
  earlierCounts: [],
  findings: [],
  asks: { budget: false, evidence: false },
  performerIds: [],
  ...change,
});

const textOf = async (of: CertificateBundle) => {
  const content = demand(composeBundle(of, null));
  return (await pdfPages(await renderCertificate(content, { draft: true }))).join("\n").replace(/\s+/g, " ");
};

it("says of one measurement of one sensor what it always said, to the byte", () => {
  const one = member("T-1", "as-received", 0.7);
  const alone = demand(composeCertificate(one.parts, null));
  expect(hex(contentHash(demand(composeBundle(bundle([one]), null)), sha256))).toBe(
    hex(contentHash(alone, sha256)),
  );
});

it("prints both sets, the change between them with its U, and what was done in between", async () => {
  const both = { anneals: [anneal], hasOtherSet: true };
  const text = await textOf(
    bundle([member("T-1", "as-received", 0.7, both), member("T-1", "after-anneal", 1.9, both)]),
  );
  for (const wanted of [
    "Serial S-T-1 (T-1) · as received",
    "Serial S-T-1 (T-1) · after annealing",
    "Change by the annealing, T-1",
    "Annealed by this laboratory on 2026-03-03 at 1100 °C for 2 h (in a tube furnace in air).",
    "as received, or after the annealing described",
  ])
    expect(text).toContain(wanted);
  // 1.9 − 0.7, with the certificates of the shared references taken out: 2·√(2·(1.27² / 4 − 0.15²)).
  expect(text).toContain("600 °C 1.2 1.7");
  expect(text).not.toContain("neither adjusted, annealed nor repaired");
});

it("prints a lot: each item, average and half range, and nothing beyond what was measured", async () => {
  const items = [0.2, 0.6, 1.3].map((error, at) => member(`T-${at}`, "as-received", error));
  const text = await textOf(bundle(items, { filedUnder: items[0] as BundleMember }));
  expect(text).toContain("3 thermocouples type K");
  expect(text).toContain("S-T-0 T-0 S-T-1 T-1 S-T-2 T-2");
  // Mean 0.7, from 0.2 to 1.3, half range 0.55 to even.
  expect(text).toMatch(/1000 °C 3 0\.7 0\.2 1\.3 0\.[56]/);
  expect(text).toContain("nothing is stated of the rest of the lot or roll");
  for (const item of items) expect(text).toContain(`Serial S-${item.sensorId} (${item.sensorId})`);
});

it("prints of each roll both ends, their average and spread, in the unit ordered", async () => {
  const fahrenheit = {
    order: { ...order, temperatureUnit: "F" as const, setpoints: [{ typed: "1832", celsius: 1000 }] },
  };
  const piece = (tag: string, error: number, roll: string, end?: "first" | "second") =>
    member(tag, "as-received", error, {
      ...fahrenheit,
      build: { lot: "7", roll, ...(end ? { end } : {}) },
      points: pointsOf(tag, error).slice(1),
    });
  const items = [
    piece("T-1", 0.2, "12", "first"),
    piece("T-2", 0.4, "12", "first"),
    piece("T-3", 1.3, "12", "second"),
    piece("T-4", 3.1, "13", "first"),
    piece("T-5", 0.9, "14"),
  ];
  const of = bundle(items, { filedUnder: items[0] as BundleMember });
  const { rolls } = demand(composeBundle(of, null));
  // Ends 0.3 and 1.3: average 0.8, half range (1.3 − 0.2) / 2; in °F 1.8 times the unrounded. One end alone: no row.
  expect(rolls?.of).toEqual([
    {
      roll: "Lot 7, roll 12",
      firstEnd: ["T-1", "T-2"],
      secondEnd: ["T-3"],
      rows: [
        {
          setpoint: "1832 °F",
          celsius: { firstEnd: "0.3", secondEnd: "1.3", average: "0.8", halfRange: "0.6" },
          fahrenheit: { firstEnd: "0.5", secondEnd: "2.3", average: "1.4", halfRange: "1.0" },
        },
      ],
    },
  ]);
  const text = await textOf(of);
  expect(text).toContain("Rolls: average and spread of both ends");
  expect(text).toContain("Lot 7, roll 12 · first end T-1, T-2 · second end T-3");
  expect(text).toMatch(/1832 °F 0\.5 2\.3 1\.4 1\.0/);
  const html = certificateHtml(demand(composeBundle(of, null)), "0".repeat(64));
  expect(html).toContain("second end T-3");
});

it("says where the customer agreed that one end of a roll is enough", async () => {
  const text = await textOf(
    bundle([member("T-1", "as-received", 0.7, { oneEndAgreed: "letter of 2026-02-20" })]),
  );
  expect(text).toContain("of its roll this end alone is reported, as agreed with the customer");
  expect(text).toContain("letter of 2026-02-20");
});

it("prints a repeat, the budgets, the evidence, the site and the provider where they are asked for", async () => {
  const one = member("T-1", "as-received", 0.7, {
    site: "7 Works Road",
    provider: "Invented Metrology, INV 9",
  });
  const text = await textOf(
    bundle([one], { repeats: ["T-1: Measured twice, and so on."], asks: { budget: true, evidence: true } }),
  );
  for (const wanted of [
    "Measured again T-1: Measured twice",
    "Uncertainty budgets T-1 at 600 °C",
    "Reference calibration normal 0.15",
    "At the customer's site: 7 Works Road",
    "external provider: Invented Metrology, INV 9",
    "The evidence file with every reading",
  ])
    expect(text).toContain(wanted);
});
