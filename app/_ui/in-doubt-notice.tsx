import Link from "next/link";
import { Notice } from "@/app/_ui/notice";

type Equipment = {
  readonly id: string;
  readonly tag: string;
  readonly state: string;
  /** Nonconforming work in which it is examined. */
  readonly report: string | null;
  /** Somebody has recorded there what it does to results. */
  readonly isExamined: boolean;
};

/** Equipment of an open run that has come into doubt since: ISO/IEC 17025 6.4.9. */
export function InDoubtNotice({ equipment }: { readonly equipment: readonly Equipment[] }) {
  if (equipment.length === 0) return null;
  return (
    <Notice kind="caution" title="Caution: equipment in doubt">
      This run stands on{" "}
      {equipment.map(({ id, tag, state, report }, index) => (
        <span key={id}>
          {index > 0 ? ", " : ""}
          <Link href={`/standards/${id}`}>{tag}</Link> ({state.replace("-", " ")}
          {report ? (
            <>
              , <Link href={`/quality/${report}`}>{report}</Link>
            </>
          ) : null}
          )
        </span>
      ))}
      , in doubt now.{" "}
      {equipment.every(({ isExamined }) => isExamined)
        ? "What that does to its results was examined and recorded there: what is on hold for it waits, the rest can be signed."
        : "Nothing of it is signed until somebody has recorded, in a report of nonconforming work, what that does to its results."}
    </Notice>
  );
}
