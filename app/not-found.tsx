import { BareShell } from "@/app/_ui/bare-shell";
import { DeadEnd } from "@/app/_ui/dead-end";

export const metadata = { title: "Not there" };

export default function NotFound() {
  return (
    <BareShell>
      <DeadEnd kind="nothing" />
    </BareShell>
  );
}
