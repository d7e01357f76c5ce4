import Link from "next/link";

type Props = { readonly trail: readonly { readonly label: string; readonly href: string }[] };

/** The way back up. The page itself is not in it: its title says it. */
export function Breadcrumb({ trail }: Props) {
  return (
    <nav className="crumbs" aria-label="Way back">
      <ol>
        {trail.map((step) => (
          <li key={step.href}>
            <Link href={step.href}>{step.label}</Link>
          </li>
        ))}
      </ol>
    </nav>
  );
}
