import Link from "next/link";
import type { ReactNode } from "react";
import { FindAnything } from "@/app/_ui/find-anything.client";
import { NavLink } from "@/app/_ui/nav-link.client";
import { StateMark } from "@/app/_ui/state-mark";
import { ThemeSwitch } from "@/app/_ui/theme-switch.client";
import { Wordmark } from "@/app/_ui/wordmark";
import { may, type Permission } from "@/lib/domain/staff/permissions";
import type { Role } from "@/lib/domain/staff/roles";
import { rolesText } from "@/lib/domain/staff/roles-text";

const places: readonly { readonly href: string; readonly label: string; readonly needs: Permission }[] = [
  { href: "/", label: "Today", needs: "laboratory.read" },
  { href: "/board", label: "The week", needs: "laboratory.read" },
  { href: "/orders", label: "Orders", needs: "laboratory.read" },
  { href: "/customers", label: "Customers", needs: "laboratory.read" },
  { href: "/sensors", label: "Sensors", needs: "laboratory.read" },
  { href: "/holds", label: "Holds", needs: "laboratory.read" },
  { href: "/storage", label: "Storage", needs: "laboratory.read" },
  { href: "/runs", label: "Runs", needs: "laboratory.read" },
  { href: "/review", label: "Review", needs: "review.read" },
  { href: "/certificates", label: "Certificates", needs: "certificate.read" },
  { href: "/standards", label: "Standards", needs: "laboratory.read" },
  { href: "/furnaces", label: "Furnaces", needs: "laboratory.read" },
  { href: "/trace", label: "Traceability", needs: "laboratory.read" },
  { href: "/shipments", label: "Shipments", needs: "laboratory.read" },
  { href: "/prices", label: "Prices", needs: "laboratory.read" },
  { href: "/invoicing", label: "Invoicing", needs: "invoicing.record" },
  { href: "/scope", label: "Scope", needs: "laboratory.read" },
  { href: "/procedures", label: "Procedures", needs: "laboratory.read" },
  { href: "/quality", label: "Quality", needs: "laboratory.read" },
  { href: "/audit", label: "Audit", needs: "audit.read" },
  { href: "/mail", label: "Mail", needs: "mail.manage" },
  { href: "/staff", label: "Staff", needs: "person.read" },
];

type Props = {
  readonly name: string;
  readonly roles: readonly Role[];
  /** The session records and does not sign. */
  readonly atBench?: boolean;
  readonly children: ReactNode;
};

/** The laboratory's side of the house: the rail with the places this person may enter, and the page. */
export function LabShell({ name, roles, atBench, children }: Props) {
  return (
    <div className="shell">
      <a className="skip" href="#main">
        Skip to the page
      </a>
      <header className="rail">
        <Wordmark href="/" />
        <FindAnything />
        <nav aria-label="Laboratory">
          <ul>
            {places
              .filter((place) => may(roles, place.needs))
              .map((place) => (
                <li key={place.href}>
                  <NavLink href={place.href} label={place.label} />
                </li>
              ))}
          </ul>
        </nav>
        <div className="rail-foot">
          <Link href="/account" prefetch={false}>
            <strong>{name}</strong>
          </Link>
          <span className="rail-roles">{rolesText(roles)}</span>
          {atBench ? <StateMark state="active" label="At the bench: records, does not sign" /> : null}
          <ThemeSwitch />
          <Link className="sign-out" href="/sign-out" prefetch={false}>
            Sign out
          </Link>
        </div>
      </header>
      <main id="main" tabIndex={-1}>
        {children}
      </main>
    </div>
  );
}
