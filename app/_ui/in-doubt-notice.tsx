import Link from "next/link";
import { Notice } from "@/app/_ui/notice";

type Equipment = { readonly id: string; readonly tag: string; readonly state: string };

/** Equipment of an open run that has gone out of service since: ISO/IEC 17025 6.4.9. */
export function InDoubtNotice({ equipment }: { readonly equipment: readonly Equipment[] }) {
  if (equipment.length === 0) return null;
  return (
    <Notice kind="caution" title="Caution: equipment in doubt">
      This run stands on{" "}
      {equipment.map(({ id, tag, state }, index) => (
        <span key={id}>
          {index > 0 ? ", " : ""}
          <Link href={`/standards/${id}`}>{tag}</Link> ({state.replace("-", " ")})
        </span>
      ))}
      , out of service now. Find out what that does to its results before it is handed over or signed.
    </Notice>
  );
}
