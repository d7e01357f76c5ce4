import { DeadEnd } from "@/app/_ui/dead-end";

export const metadata = { title: "Not there" };

/** Within the house, which has its head already. */
export default function NotFound() {
  return <DeadEnd kind="nothing" />;
}
