import { createHash } from "node:crypto";
import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { digestOfRoots, provesChannel } from "@/lib/data/evidence/block-hash";
import { blocksBehindDigest, blocksDigest } from "@/lib/data/evidence/blocks-digest";
import {
  type IncomingChannel,
  insertScanBlock,
  type StoredBlock,
} from "@/lib/data/evidence/insert-scan-block";
import { loadReadings } from "@/lib/data/evidence/read-scan-channels";
import { verifyBlocks } from "@/lib/data/evidence/verify-blocks";
import { inScope } from "@/lib/data/in-scope";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { type TwoCustomers, twoCustomers } from "./two-customers";

const laboratory = { kind: "laboratory" } as const;

let database: TestDatabase;
let admin: pg.Client;
let world: TwoCustomers;
let runId: string;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  world = await twoCustomers(admin);
  // The fixture's blocks are no real ones; the runs here begin without any.
  await admin.query(`ALTER TABLE scan_block DISABLE TRIGGER ALL; ALTER TABLE scan_block_channel DISABLE TRIGGER ALL;
    DELETE FROM scan_block_channel; DELETE FROM scan_block;
    ALTER TABLE scan_block ENABLE ALWAYS TRIGGER refuse_change;
    ALTER TABLE scan_block_channel ENABLE ALWAYS TRIGGER refuse_change`);
  configureDatabase(database.runtimeUrl);
  runId = world.sharedRun.id;
});

afterAll(async () => {
  await closeDatabase();
  await admin?.end();
  await database?.drop();
});

/** Any 64 bits that are a finite number, from a counter: all exponents, both signs. */
const anyFloats = (count: number, seed: number): Float64Array => {
  const floats = new Float64Array(count);
  const bytes = createHash("shake256", { outputLength: count * 8 })
    .update(`${seed}`)
    .digest();
  for (let index = 0; index < count; index += 1) {
    const value = bytes.readDoubleLE(index * 8);
    floats[index] = Number.isFinite(value) ? value : index;
  }
  return floats;
};

const extremes = [0, -0, 5e-324, -5e-324, 2.2250738585072014e-308, 2.225073858507201e-308]
  .concat([Number.MAX_VALUE, -Number.MAX_VALUE, 0.1, 1 / 3, 9585.249999999998, Number.EPSILON])
  .concat([Number.MAX_SAFE_INTEGER, Number.MIN_SAFE_INTEGER]);

const channelOf = (channel: string, customerId: string | null, values: Float64Array): IncomingChannel => ({
  channel,
  customerId,
  times: Float64Array.from(values, (_, index) => index * 10 + 0.1),
  values,
  polarity: Int8Array.from(values, (_, index) => (index % 2 === 0 ? 1 : -1)),
});

const store = (sequence: number, channels: readonly IncomingChannel[], id = runId): Promise<StoredBlock> =>
  inScope(laboratory, (tx) =>
    insertScanBlock(tx, {
      runId: id,
      sequence,
      source: "file",
      fileName: "readings.csv",
      sourceSha256: createHash("sha256").update("bytes").digest(),
      channels,
      receivedById: world.technicianId,
      receivedAt: new Date("2026-03-02T10:00:00Z"),
    }),
  );

const bits = (floats: Float64Array): string =>
  Buffer.from(floats.buffer, floats.byteOffset, floats.byteLength).toString("hex");

describe("a run's readings", () => {
  const reference = [Float64Array.from(extremes), anyFloats(10_000, 1)] as const;
  const ofA = [anyFloats(14, 2), anyFloats(10_000, 3)] as const;
  const ofB = [anyFloats(14, 4), anyFloats(10_000, 5)] as const;
  const roots: Uint8Array[] = [];

  const incoming = (block: 0 | 1) => [
    channelOf("0", null, reference[block]),
    channelOf("1", world.a.customerId, ofA[block]),
    channelOf("2", world.b.customerId, ofB[block]),
  ];

  it("come back bit for bit, block after block", async () => {
    for (const block of [0, 1] as const) roots.push((await store(block + 1, incoming(block))).root);
    const readings = await inScope(laboratory, (tx) => loadReadings(tx, runId));
    expect([...readings.keys()]).toEqual(["0", "1", "2"]);
    for (const [index, sent] of [reference, ofA, ofB].entries()) {
      const found = readings.get(`${index}`)!;
      expect(bits(found.values)).toBe(bits(sent[0]) + bits(sent[1]));
      const [one, two] = sent.map((values) => channelOf("", null, values));
      expect(bits(found.times)).toBe(bits(one!.times) + bits(two!.times));
      expect([...found.polarity]).toEqual([...one!.polarity, ...two!.polarity]);
    }
  });

  it("can be asked for by channel, and as they were at an earlier block", async () => {
    const early = await inScope(laboratory, (tx) =>
      loadReadings(tx, runId, { channels: ["1"], upToSequence: 1 }),
    );
    expect([...early.keys()]).toEqual(["1"]);
    expect(bits(early.get("1")!.values)).toBe(bits(ofA[0]));
  });

  it("have one digest for all blocks, and each earlier digest names its blocks", async () => {
    expect(await inScope(laboratory, (tx) => blocksDigest(tx, runId))).toEqual(digestOfRoots(roots));
    const behind = (digest: Uint8Array) => inScope(laboratory, (tx) => blocksBehindDigest(tx, runId, digest));
    expect(await behind(digestOfRoots(roots))).toBe(2);
    expect(await behind(digestOfRoots(roots.slice(0, 1)))).toBe(1);
    expect(await behind(digestOfRoots([]))).toBe(0);
    expect(await behind(digestOfRoots(roots.toReversed()))).toBeUndefined();
  });

  it("show a customer its own and the reference's, and prove them without B's", async () => {
    const scope = { kind: "customer", customerId: world.a.customerId } as const;
    const seen = await inScope(scope, async (tx) => ({
      readings: await loadReadings(tx, runId),
      blocks: await tx.scanBlock.findMany({ include: { channels: true }, orderBy: { sequence: "asc" } }),
    }));
    expect([...seen.readings.keys()]).toEqual(["0", "1"]);
    expect(seen.blocks).toHaveLength(2);
    for (const block of seen.blocks) {
      expect(block.channels.map((channel) => channel.channel).sort()).toEqual(["0", "1"]);
      for (const channel of block.channels) expect(provesChannel(block, channel.ordinal, channel)).toBe(true);
    }
    const { salt: _own, ...withoutSalt } = seen.blocks[0]!.channels[0]!;
    expect(provesChannel(seen.blocks[0]!, 0, { ...withoutSalt, salt: new Uint8Array(16) })).toBe(false);
  });

  it("are salted: the same readings twice have different leaves", async () => {
    const twice = [channelOf("0", null, Float64Array.of(1)), channelOf("1", null, Float64Array.of(1))];
    await store(1, twice, world.runOfB.id);
    await store(2, twice, world.runOfB.id);
    const { rows } = await admin.query("SELECT leaf, salt FROM scan_block_channel WHERE run_id = $1", [
      world.runOfB.id,
    ]);
    for (const column of ["leaf", "salt"])
      expect(new Set(rows.map((row) => row[column].toString("hex"))).size).toBe(4);
  });

  it.each([
    ["a NaN", { values: Float64Array.of(1, Number.NaN) }],
    ["an infinity", { times: Float64Array.of(0, Number.POSITIVE_INFINITY) }],
    ["a missing value", { values: Float64Array.of(1) }],
    ["a polarity of 0", { polarity: Int8Array.of(1, 0) }],
    ["no reading", { times: new Float64Array(), values: new Float64Array(), polarity: new Int8Array() }],
  ])("are refused whole with %s", async (_name, wrong) => {
    const good = channelOf("0", null, Float64Array.of(1, 2));
    await expect(
      store(3, [good, { ...channelOf("1", null, Float64Array.of(1, 2)), ...wrong }]),
    ).rejects.toThrow(RangeError);
    expect(await inScope(laboratory, (tx) => tx.scanBlock.count({ where: { runId } }))).toBe(2);
  });

  it("are refused when a channel stands twice, or a block comes twice", async () => {
    const channel = channelOf("0", null, Float64Array.of(1));
    await expect(store(3, [channel, channel])).rejects.toThrow(RangeError);
    await expect(store(2, [channel])).rejects.toMatchObject({ code: "P2002" });
  });
});

describe("verifying the blocks", () => {
  const readings = 3 * 14 + 3 * 10_000 + 4;

  it("finds them whole", async () => {
    expect(await verifyBlocks()).toEqual({ kind: "whole", blocks: 4, readings });
  });

  it.each([
    [
      "one bit of one reading",
      `UPDATE scan_block_channel SET values = set_bit(values, 70000, 1 - get_bit(values, 70000))
         WHERE channel = '2' AND count = 10000`,
      /channel 2 are not as received/,
    ],
    [
      "a channel's own leaf as well",
      `UPDATE scan_block_channel SET polarity = set_byte(polarity, 0, 255),
         leaf = sha256('\\x00'::bytea || salt || int8send(1) || convert_to(channel, 'UTF8') || int8send(count)
                       || times || values || set_byte(polarity, 0, 255)) WHERE channel = '1' AND count = 14`,
      /leaves are not those/,
    ],
    ["the leaves", `UPDATE scan_block SET leaves = set_byte(leaves, 0, 0) || '\\x'`, /leaves are not those/],
    ["the root", "UPDATE scan_block SET root = sha256('x')", /root is not/],
    ["the count", "UPDATE scan_block SET reading_count = reading_count + 1", /number of readings/],
    [
      "a lost channel",
      "DELETE FROM scan_block_channel WHERE channel = '0'",
      /channel 0 of the block is missing/,
    ],
    ["a lost last channel", "DELETE FROM scan_block_channel WHERE channel = '2'", /leaves are not those/],
    [
      "a lost block",
      "DELETE FROM scan_block_channel USING scan_block b WHERE b.id = block_id AND b.sequence = 1; DELETE FROM scan_block WHERE sequence = 1",
      /block 1 is missing/,
    ],
  ])("finds %s", async (_name, sql, reason) => {
    // A superuser's change is committed, found, and taken back: the product looks from other connections.
    await admin.query(`CREATE TABLE kept_block AS TABLE scan_block; CREATE TABLE kept_channel AS TABLE scan_block_channel;
      ALTER TABLE scan_block DISABLE TRIGGER ALL; ALTER TABLE scan_block_channel DISABLE TRIGGER ALL`);
    try {
      await admin.query(sql);
      const verdict = await verifyBlocks();
      expect(verdict).toMatchObject({ kind: "broken", reason: expect.stringMatching(reason) });
      expect(verdict).toMatchObject({ record: expect.stringMatching(/^scan block \d of run /) });
    } finally {
      await admin.query(`DELETE FROM scan_block_channel; DELETE FROM scan_block;
        INSERT INTO scan_block TABLE kept_block; INSERT INTO scan_block_channel TABLE kept_channel;
        DROP TABLE kept_block, kept_channel`);
    }
    expect(await verifyBlocks()).toEqual({ kind: "whole", blocks: 4, readings });
  });
});
