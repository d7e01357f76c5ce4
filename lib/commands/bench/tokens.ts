import { performance } from "node:perf_hooks";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { authenticityView } from "@/lib/views/authenticity";
import { fillLaboratory } from "./lists-database";
import { fixed } from "./print-figure";
import { withDatabase } from "./with-database";

const questions = 500;
const limit = 0.1;

const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;

type Asked = "known" | "unknown" | "malformed";

/** In turn, so that whatever else the machine does falls on all; each from an address of its own, for none to be refused. */
const ask = async (tokens: Readonly<Record<Asked, string>>): Promise<Record<Asked, number>> => {
  const times: Record<Asked, number[]> = { known: [], unknown: [], malformed: [] };
  const kinds = Object.keys(tokens) as Asked[];
  for (let question = -20; question < questions; question += 1)
    for (const [turn, kind] of (question % 2 === 0 ? kinds : kinds.toReversed()).entries()) {
      const begun = performance.now();
      await authenticityView(tokens[kind], `bench ${question} ${turn}`, new Date());
      if (question >= 0) times[kind].push(performance.now() - begun);
    }
  return {
    known: median(times.known),
    unknown: median(times.unknown),
    malformed: median(times.malformed),
  };
};

/** Whether the time of an answer tells a known token from another. */
export const benchTokens = async (content: CertificateContent): Promise<void> => {
  let apart = Number.NaN;
  await withDatabase(async (adminUrl, runtimeUrl) => {
    const admin = await connect(adminUrl);
    try {
      await fillLaboratory(admin, { orders: 100, customers: 50, inWork: 40 }, JSON.stringify(content));
      const { rows } = await admin.query("SELECT token FROM certificate ORDER BY number LIMIT 1");
      configureDatabase(runtimeUrl);
      const found = await ask({ known: rows[0].token, unknown: "u".repeat(43), malformed: "C-2026-000001" });
      apart = Math.max(...[found.unknown, found.malformed].map((time) => Math.abs(time / found.known - 1)));
      console.log(`\nAnswer about a token, medians of ${questions}`);
      for (const [kind, time] of Object.entries(found)) console.log(`  ${kind.padEnd(9)} ${fixed(time)} ms`);
      console.log(`  apart     ${(100 * apart).toFixed(1)} % (limit ${100 * limit} %)`);
    } finally {
      await closeDatabase();
      await admin.end();
    }
  });
  if (!(apart <= limit)) throw new Error("the time of an answer tells a known token from an unknown one");
};
