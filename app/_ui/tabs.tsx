import Link from "next/link";

type Tab = { readonly label: string; readonly href: string; readonly count?: number | string };

type Props = { readonly tabs: readonly Tab[]; readonly current: string; readonly label: string };

/** Sub-pages of one thing, as links: each has its own address. `current` is the href of the open one. */
export function Tabs({ tabs, current, label }: Props) {
  return (
    <nav className="tabs" aria-label={label}>
      <ul>
        {tabs.map((tab) => (
          <li key={tab.href}>
            <Link href={tab.href} aria-current={tab.href === current ? "page" : undefined}>
              {tab.label}
              {tab.count === undefined ? null : <span className="quiet"> {tab.count}</span>}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
