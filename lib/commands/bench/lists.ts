import { performance } from "node:perf_hooks";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import type { Actor } from "@/lib/domain/staff/actor";
import type { Role } from "@/lib/domain/staff/roles";
import { fillLaboratory, idOf, type Size } from "./lists-database";
import { type ListQuestion, listQuestions } from "./lists-questions";
import { fixed } from "./print-figure";
import { withDatabase } from "./with-database";

/** The same laboratory after a week and after years. What is in work grows less: four furnaces are four furnaces. */
const small: Size = { orders: 100, customers: 50, inWork: 40 };
const large: Size = { orders: 10_000, customers: 500, inWork: 200 };

const calls = 60;
const limit = 2;

const bench = { personId: "00000000-0000-4000-8000-000000000001", name: "Bench" } as const;

/** Somebody of the laboratory, or of the seventh customer, as `lists-database` names it. */
const actorOf = (role: Role): Actor =>
  role === "customer"
    ? { kind: "customer", ...bench, roles: [role], customerId: idOf("customer", 7) }
    : { kind: "staff", ...bench, roles: [role] };

const p95 = (times: readonly number[]): number => {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.ceil(sorted.length * 0.95) - 1] ?? Number.NaN;
};

type Times = Map<string, number[]>;
type Side = { readonly url: string; readonly questions: readonly ListQuestion[]; readonly times: Times };

/** Call by call on both sides in turn, so that whatever else the machine does falls on both; the first does not count. */
const askAll = async (sides: readonly Side[], wanted: (name: string) => boolean): Promise<void> => {
  const names = sides[0]?.questions.map(({ name }) => name) ?? [];
  for (let call = -1; call < calls; call++)
    for (const [at, name] of names.entries())
      for (const { url, questions, times } of call % 2 === 0 ? sides : [...sides].reverse()) {
        const question = questions[at];
        if (!question || !wanted(name)) continue;
        configureDatabase(url);
        const begun = performance.now();
        await question.ask(actorOf(question.as));
        if (call >= 0) times.set(name, [...(times.get(name) ?? []), performance.now() - begun]);
      }
};

const ratioOf = (name: string, before: Times, after: Times): number =>
  p95(after.get(name) ?? []) / p95(before.get(name) ?? []);

const print = (questions: readonly ListQuestion[], before: Times, after: Times): readonly string[] =>
  questions.flatMap(({ name }) => {
    const [few, many] = [p95(before.get(name) ?? []), p95(after.get(name) ?? [])];
    const ratio = ratioOf(name, before, after);
    console.log(
      `  ${name.padEnd(46)} ${fixed(few).padStart(7)} ms  ${fixed(many).padStart(7)} ms  ${fixed(ratio).padStart(5)} ×`,
    );
    return ratio > limit ? [`${name}: ${fixed(ratio)} ×`] : [];
  });

/** The first page of each list at both sizes, in turns, and the ratio of their 95th percentiles. */
export const benchLists = async (content: CertificateContent): Promise<void> => {
  const text = JSON.stringify({ ...content, number: "C-BENCH" });
  console.log(
    `\nFirst pages, p95 of ${calls} calls: ${small.orders} orders of ${small.customers} customers, and ${large.orders} of ${large.customers} (ten to eleven sensors an order)`,
  );
  const fill = async (adminUrl: string, size: Size): Promise<number> => {
    const admin = await connect(adminUrl);
    const begun = performance.now();
    await fillLaboratory(admin, size, text).finally(() => admin.end());
    return (performance.now() - begun) / 1000;
  };
  const over: string[] = [];
  await withDatabase(async (smallAdmin, smallUrl) => {
    await withDatabase(async (largeAdmin, largeUrl) => {
      const seeded = [await fill(smallAdmin, small), await fill(largeAdmin, large)];
      console.log(`  filled in ${seeded.map(fixed).join(" s and ")} s; limit ${limit} ×`);
      const [before, after]: [Times, Times] = [new Map(), new Map()];
      const few = listQuestions(small);
      const sides: readonly Side[] = [
        { url: smallUrl, questions: few, times: before },
        { url: largeUrl, questions: listQuestions(large), times: after },
      ];
      try {
        await askAll(sides, () => true);
        // Of sixty calls three lie above the 95th percentile: what is over is asked as often again, and all calls count.
        const again = new Set(
          few.map(({ name }) => name).filter((name) => ratioOf(name, before, after) > limit),
        );
        await askAll(sides, (name) => again.has(name));
        if (again.size > 0) console.log(`  asked as often again: ${[...again].join("; ")}`);
      } finally {
        await closeDatabase();
      }
      over.push(...print(few, before, after));
    });
  });
  // Said once both databases are gone: thrown within, it would be lost behind their connections' own ends.
  if (over.length > 0) throw new Error(`slower than ${limit} × at the larger size: ${over.join("; ")}`);
};
