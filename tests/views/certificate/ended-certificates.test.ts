import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadAmended } from "@/lib/data/amendment/load-amended";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import type { Standing } from "@/lib/domain/certificate/standing";
import { demand } from "@/lib/domain/refusal";
import { askAmendment } from "@/lib/operations/certificate/ask-amendment";
import { signOffAmendment } from "@/lib/operations/certificate/sign-off-amendment";
import { withdrawCertificate } from "@/lib/operations/certificate/withdraw";
import { execute } from "@/lib/operations/execute";
import { orderView } from "@/lib/views/order/order";
import { reviewRunView } from "@/lib/views/review-run";
import { sensorView } from "@/lib/views/sensor/sensor";
import { tracePageView } from "@/lib/views/trace-page";
import { traceStandardView } from "@/lib/views/trace-standard";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { issueAllNow } from "../../support/issue-now";
import { signClock, signingAct, signRun } from "../../support/sign-run";

/** Of three certificates one stands, one was amended twice, one was withdrawn: what the laboratory's own pages say. */

const laboratory = { kind: "laboratory" } as const;
let database: TestDatabase;
let world: World;
let order: string;
let run: string;
let tags: readonly string[];
let standing: string;
let withdrawn: string;
/** Each follows the one before it. */
let line: readonly [first: string, second: string, third: string];

const minuteLater = () => new Date(signClock().getTime() + 60_000);

const amend = async (number: string, clock = signClock): Promise<string> => {
  const certificate = await inScope(laboratory, (tx) =>
    tx.certificate.findUniqueOrThrow({ where: { number } }),
  );
  const asked = { certificateId: certificate.id, kind: "amendment" as const, reason: "misread (invented)" };
  const corrections = { purchaseOrder: `PO after ${number}` };
  const { id } = await execute(askAmendment, world.people.quality, { ...asked, corrections }, clock);
  const reviewedHash = await inScope(laboratory, async (tx) => {
    const row = await tx.amendment.findUniqueOrThrow({ where: { id } });
    const following = demand(await loadAmended(tx, certificate, row));
    return hex(contentHash(demand(following.compose(null)), sha256));
  });
  const act = { amendmentId: id, reviewedHash, act: signingAct() };
  const signed = await execute(signOffAmendment, world.people.signatory, act, clock);
  await issueAllNow();
  return signed.number;
};

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  const built = await buildRun(world, { owners: ["north", "north", "north"] });
  order = built.orders[0]!.number;
  run = built.run.number;
  tags = built.sensors.map(({ tag }) => tag);
  const signed = await signRun(world.people.signatory, built);
  await issueAllNow();
  const [one, two, three] = signed.map(({ number }) => number) as [string, string, string];
  const second = await amend(two);
  [standing, withdrawn, line] = [one, three, [two, second, await amend(second, minuteLater)]];
  const reason = "Another sensor was measured (invented).";
  const ended = { certificateId: signed[2]!.id, reason, forGood: true as const };
  await execute(withdrawCertificate, world.people.quality, ended, signClock);
});
afterAll(async () => {
  await closeDatabase();
  await database?.drop();
});

const said = (one: { readonly number: string; readonly standing: Standing }) =>
  `${one.number} ${one.standing.kind}${"successor" in one.standing ? ` by ${one.standing.successor}` : ""}`;
/** Of each sensor, the one that counts first and the latest before the earlier. */
const ofEach = () => [
  [`${standing} valid`],
  [`${line[2]} valid`, `${line[1]} amended by ${line[2]}`, `${line[0]} amended by ${line[1]}`],
  [`${withdrawn} withdrawn`],
];

describe("a certificate that stands no longer is said to be so", () => {
  it("on the page of its order, each by itself, the one that counts first", async () => {
    const { lines } = await orderView(world.people.desk, order, signClock());
    const sensors = lines.flatMap((one) => one.sensors);
    expect(sensors.map(({ tag }) => tag)).toEqual(tags);
    expect(sensors.map(({ certificates }) => certificates.map(said))).toEqual(ofEach());
  });

  it("on the page of its sensor", async () => {
    const seen = [];
    for (const tag of tags) seen.push((await sensorView(world.people.desk, tag)).certificates.map(said));
    expect(seen).toEqual(ofEach());
  });

  it("in the review of its run, where nothing followed it", async () => {
    const { sensors } = await reviewRunView(world.people.signatory, run);
    expect(sensors.map(({ certificate }) => certificate && said(certificate))).toEqual(
      ofEach().map(([first]) => first),
    );
  });
});

it("a chain is told with what its certificate is now, and which one counts instead", async () => {
  const traced = async (number: string) =>
    (await tracePageView(world.people.technician, number, { celsius: null, on: "2026-03-06" })).standing;
  expect(await traced(standing)).toEqual({ kind: "valid" });
  expect(await traced(line[0])).toMatchObject({ kind: "amended", successor: line[1] });
  expect(await traced(withdrawn)).toMatchObject({ kind: "withdrawn", reason: /Another sensor/ });
});

it("the chain of an amendment is that of the results it repeats, frozen with the certificate it amends", async () => {
  const traced = async (number: string) => {
    const page = await tracePageView(world.people.technician, number, { celsius: null, on: "2026-03-06" });
    return { ...page, frozen: [page.isFrozenEarlier, page.isFrozenLater] };
  };
  const [first, third] = [await traced(line[0]), await traced(line[2])];
  expect(first.results).toHaveLength(2);
  expect(third).toMatchObject({ results: first.results, tree: first.tree, frozenAt: first.frozenAt });
  expect([first.frozen, third.frozen]).toEqual([
    [false, false],
    [true, false],
  ]);
});

it("a standard says beside each result what became of its certificate", async () => {
  const asked = { on: "2026-03-06", calibrationId: null, page: 1 };
  const { results } = await traceStandardView(world.people.technician, world.references[0].id, asked);
  const seen = results.map((one) => said({ number: one.certificate, standing: one.standing }));
  expect([...new Set(seen)].sort()).toEqual(
    [`${standing} valid`, `${line[0]} amended by ${line[1]}`, `${withdrawn} withdrawn`].sort(),
  );
});
