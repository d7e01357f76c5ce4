import type { Tx } from "@/lib/data/in-scope";
import { owedSecondLooks } from "@/lib/data/sql/owed-second-looks";
import { pendingCertificates } from "@/lib/data/sql/pending-certificates";
import { todayShown, type Waiting } from "./waiting";

/** Signed off, numbered, and not rendered yet. */
export const certificatesPending = async (tx: Tx): Promise<Waiting> => {
  const found = await pendingCertificates(tx, todayShown);
  return {
    count: found[0]?.count ?? 0,
    items: found.map(({ number }) => ({
      key: number,
      label: number,
      detail: "signed off, its document is being made",
      href: `/certificates/${number}`,
      state: "pending",
    })),
  };
};

/** Signed off by whoever measured; another signatory or the quality manager looks later. */
export const secondLooksOwed = async (tx: Tx): Promise<Waiting> => {
  const found = await owedSecondLooks(tx, todayShown);
  return {
    count: found[0]?.count ?? 0,
    items: found.map(({ number, signedAt, reason }) => ({
      key: number,
      label: number,
      detail: `signed ${signedAt.toISOString().slice(0, 10)} by whoever measured: ${reason}`,
      href: `/certificates/${number}`,
    })),
  };
};

const openOf = async (tx: Tx, kind: "nonconforming-work" | "complaint"): Promise<Waiting> => {
  const where = { kind, state: { in: ["open", "examined", "corrected"] } };
  const rows = await tx.nonconformity.findMany({ where, orderBy: { openedAt: "asc" }, take: todayShown });
  return {
    count: rows.length < todayShown ? rows.length : await tx.nonconformity.count({ where }),
    items: rows.map(({ number, title, subjectName, state }) => ({
      key: number,
      label: number,
      detail: `${title}, ${subjectName}, ${state}`,
      href: `/quality/${number}`,
    })),
  };
};

export const nonconformingWork = (tx: Tx): Promise<Waiting> => openOf(tx, "nonconforming-work");
export const complaints = (tx: Tx): Promise<Waiting> => openOf(tx, "complaint");
