import Link from "next/link";
import { Notice } from "@/app/_ui/notice";

type Props = {
  readonly twice: readonly { readonly serial: string; readonly tag: string; readonly other: string }[];
};

/** Two of one serial and type in the house: either the first left and nobody wrote it down, or they are two sensors. */
export function StillHere({ twice }: Props) {
  if (twice.length === 0) return null;
  return (
    <Notice kind="caution" title="A serial is here twice">
      <ul className="list">
        {twice.map(({ serial, tag, other }) => (
          <li key={tag}>
            {tag}: <Link href={`/sensors/${other}`}>{other}</Link> with the serial {serial} is still here. If
            it was handed back, write that down there; if not, keep the two apart by their labels.
          </li>
        ))}
      </ul>
    </Notice>
  );
}
