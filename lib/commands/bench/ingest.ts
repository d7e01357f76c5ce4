import { createHash, randomUUID } from "node:crypto";
import { rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import pg from "pg";
import { changeUrl } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { insertScanBlock } from "@/lib/data/evidence/insert-scan-block";
import { inScope } from "@/lib/data/in-scope";
import { bytesOfFloats, bytesOfPolarity } from "@/lib/domain/evidence/readings-bytes";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { compare, type Figure } from "./measure";

const hex = (bytes: Uint8Array): string => `\\\\x${Buffer.from(bytes).toString("hex")}`;

/** The same bytes as one COPY would load: channel, times, values, polarity; no hash, no policy, no check. */
const copyText = (channels: EvidenceInput["scans"]["channels"]): string =>
  channels
    .map((channel) =>
      [
        channel.channel,
        hex(bytesOfFloats(Float64Array.from(channel.seconds))),
        hex(bytesOfFloats(Float64Array.from(channel.microvolts))),
        hex(bytesOfPolarity(Int8Array.from(channel.polarity))),
      ].join("\t"),
    )
    .join("\n");

/** A run and a person to hang the blocks on; what they refer to is nothing the ingest reads. */
const insertRun = async (admin: pg.Client, runId: string, personId: string): Promise<void> => {
  await admin.query("SET session_replication_role = replica");
  await admin.query(
    "INSERT INTO person (id, email, name, password_hash) VALUES ($1, 'bench@example.org', 'Bench', '-')",
    [personId],
  );
  await admin.query(
    `WITH made AS (INSERT INTO procedure (key, title) VALUES ('bench', 'Bench') RETURNING id)
     INSERT INTO procedure_revision (procedure_id, revision, state, budget_inputs, verification, recorded_at, current_from)
     SELECT id, 1, 'current', '{}', '-', now(), now() FROM made`,
  );
  await admin.query(
    `INSERT INTO run (id, number, configuration_id, voltmeter_id, scanner_id, performer_id, created_at, procedure_revision_id, budget_inputs)
     SELECT $1, 'R-2026-0001', $2, $2, $2, $3, now(), id, budget_inputs FROM procedure_revision`,
    [runId, randomUUID(), personId],
  );
  await admin.query(
    `INSERT INTO gate_outcome (run_id, verdict, rows, policy, plan_digest, assessed_by_id, assessed_at)
     VALUES ($1, 'may-start', '[]', '{}', sha256('bench'), $2, now())`,
    [runId, personId],
  );
  await admin.query("SET session_replication_role = origin");
};

/** Readings of a full run stored as one block, hashed, under row-level security, against COPY of the same bytes. */
export const benchIngest = async (
  adminUrl: string,
  runtimeUrl: string,
  evidence: EvidenceInput,
): Promise<Figure> => {
  const { channels } = evidence.scans;
  const file = path.join(tmpdir(), `emfolio-bench-${randomUUID()}.tsv`);
  writeFileSync(file, `${copyText(channels)}\n`, { mode: 0o644 });
  const admin = new pg.Client({ connectionString: changeUrl(adminUrl, {}) });
  await admin.connect();
  configureDatabase(runtimeUrl);
  const runId = randomUUID();
  const receivedById = randomUUID();
  const incoming = channels.map((channel) => ({
    channel: channel.channel,
    customerId: null,
    times: Float64Array.from(channel.seconds),
    values: Float64Array.from(channel.microvolts),
    polarity: Int8Array.from(channel.polarity),
  }));
  let sequence = 0;
  try {
    await insertRun(admin, runId, receivedById);
    await admin.query("CREATE TABLE bench_copy (channel text, times bytea, readings bytea, polarity bytea)");
    return await compare(
      {
        name: "Ingest of a full run's scans",
        ours: "insertScanBlock: leaves, root, row-level security, append-only",
        baseline: "COPY of the same bytes into a bare table",
      },
      async () => {
        sequence += 1;
        const sourceSha256 = createHash("sha256").update(String(sequence)).digest();
        await inScope({ kind: "laboratory" }, (tx) =>
          insertScanBlock(tx, {
            runId,
            sequence,
            source: "file",
            fileName: "bench.csv",
            sourceSha256,
            channels: incoming,
            receivedById,
            receivedAt: new Date(0),
          }),
        );
      },
      async () => {
        await admin.query(`COPY bench_copy FROM ${pg.escapeLiteral(file)}`);
      },
    );
  } finally {
    rmSync(file, { force: true });
    await admin.end();
    await closeDatabase();
  }
};
