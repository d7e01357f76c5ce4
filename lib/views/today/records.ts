import { askedAmendments } from "@/lib/data/amendment/asked-amendments";
import type { Tx } from "@/lib/data/in-scope";
import { openRemarks } from "@/lib/data/sql/open-remarks";
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

/** ISO/IEC 17025 7.8.8: asked for by one, signed by another. */
export const amendmentsAsked = async (tx: Tx): Promise<Waiting> => {
  const { count, asked } = await askedAmendments(tx, todayShown);
  return {
    count,
    items: asked.map(({ number, kind, reason }) => ({
      key: number,
      label: number,
      detail: `${kind}: ${reason}`,
      href: `/certificates/${number}#asked`,
    })),
  };
};

/** What was remarked in review waits for an answer of whoever measured. */
export const remarksOpen = async (tx: Tx): Promise<Waiting> => {
  const found = await openRemarks(tx, todayShown);
  return {
    count: found[0]?.count ?? 0,
    items: found.map(({ number, remarks }) => ({
      key: number,
      label: number,
      detail: remarks === 1 ? "1 remark is open" : `${remarks} remarks are open`,
      href: `/review/${number}#reading`,
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
