import Link from "next/link";
import type { ReactNode } from "react";
import { NavLink } from "@/app/_ui/nav-link.client";
import { ThemeSwitch } from "@/app/_ui/theme-switch.client";
import { Wordmark } from "@/app/_ui/wordmark";

type Props = {
  readonly name: string;
  /** Whether this person may invite colleagues and set things up for the others. */
  readonly mayManage: boolean;
  readonly children: ReactNode;
};

/** The customer's side: one column, plain words, fit for a telephone. */
export function PortalShell({ name, mayManage, children }: Props) {
  return (
    <div className="shell shell-portal">
      <a className="skip" href="#main">
        Skip to the page
      </a>
      <header className="top">
        <Wordmark href="/portal" />
        <nav aria-label="Your calibrations">
          <ul>
            <li>
              <NavLink href="/portal/orders" label="Orders" />
            </li>
            <li>
              <NavLink href="/portal/sensors" label="Sensors" />
            </li>
            <li>
              <NavLink href="/portal/certificates" label="Certificates" />
            </li>
            <li>
              <NavLink href="/portal/addresses" label="Addresses" />
            </li>
            {mayManage ? (
              <>
                <li>
                  <NavLink href="/portal/colleagues" label="Colleagues" />
                </li>
                <li>
                  <NavLink href="/portal/programs" label="Programs" />
                </li>
              </>
            ) : null}
          </ul>
        </nav>
        <div className="top-end">
          <Link href="/account" prefetch={false}>
            {name}
          </Link>
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
