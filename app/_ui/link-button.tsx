import Link from "next/link";
import type { ReactNode } from "react";

type Props = {
  readonly href: string;
  readonly kind?: "primary" | "quiet" | "danger";
  readonly size?: "desk" | "bench";
  /** A file, not a page: leaves the router alone. */
  readonly download?: boolean;
  readonly children: ReactNode;
};

export function LinkButton({ href, kind = "quiet", size = "desk", download, children }: Props) {
  return download ? (
    <a className="button" data-kind={kind} data-size={size} href={href} download>
      {children}
    </a>
  ) : (
    <Link className="button" data-kind={kind} data-size={size} href={href}>
      {children}
    </Link>
  );
}
