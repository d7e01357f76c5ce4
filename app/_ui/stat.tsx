import Link from "next/link";
import type { ReactNode } from "react";

type Props = { readonly value: ReactNode; readonly label: string; readonly href?: string };

/** A number that stands for itself. Put several into `<div className="stats">`. */
export function Stat({ value, label, href }: Props) {
  return (
    <div className="stat">
      <span className="stat-value">{value}</span>
      <span className="stat-label">{href ? <Link href={href}>{label}</Link> : label}</span>
    </div>
  );
}
