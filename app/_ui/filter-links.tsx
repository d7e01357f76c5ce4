import Link from "next/link";

export type FilterLink = { readonly label: string; readonly href: string; readonly isOn: boolean };

type Props = { readonly label: string; readonly links: readonly FilterLink[] };

/** Filters as links: what is on leads back to the list without it. */
export function FilterLinks({ label, links }: Props) {
  return (
    <nav className="filters" aria-label={label}>
      <span className="quiet" aria-hidden="true">
        {label}
      </span>
      <ul>
        {links.map((link) => (
          <li key={link.label}>
            <Link href={link.href} aria-current={link.isOn ? "true" : undefined}>
              {link.label}
              {link.isOn ? <span className="unseen"> (on; without it)</span> : null}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
