import type { ReactNode } from "react";
import { ThemeSwitch } from "@/app/_ui/theme-switch.client";
import { Wordmark } from "@/app/_ui/wordmark";

/** For pages before or outside sign-in: the mark and one column. */
export function BareShell({ children }: { readonly children: ReactNode }) {
  return (
    <div className="shell-bare">
      <a className="skip" href="#main">
        Skip to the page
      </a>
      <header className="top">
        <Wordmark href="/" />
        <div className="top-end">
          <ThemeSwitch />
        </div>
      </header>
      <main id="main" tabIndex={-1}>
        {children}
      </main>
    </div>
  );
}
