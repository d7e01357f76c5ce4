"use client";
import Link from "next/link";
import { usePathname } from "next/navigation";

type Props = { readonly href: string; readonly label: string };

/** A place in the navigation; it knows when it is open, deeper pages included. */
export function NavLink({ href, label }: Props) {
  const path = usePathname() ?? "";
  const here = path === href;
  const inside = here || (href !== "/" && path.startsWith(`${href}/`));
  return (
    <Link href={href} aria-current={here ? "page" : inside ? "true" : undefined}>
      {label}
    </Link>
  );
}
