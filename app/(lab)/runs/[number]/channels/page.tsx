import Link from "next/link";
import { ChannelChart } from "@/app/_ui/drawing/channel-chart";
import { Section } from "@/app/_ui/section";
import { runChannelsView } from "@/lib/views/run/run-channels";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { RunPage } from "../run-page";

type Props = {
  readonly params: Promise<{ readonly number: string }>;
  readonly searchParams: Promise<{ readonly channel?: string }>;
};

export const generateMetadata = async ({ params }: Props) => ({
  title: `Channels of ${(await params).number}`,
});

export default async function RunChannelsPage({ params, searchParams }: Props) {
  const actor = await requireStaff();
  const { number } = await params;
  const view = await load(runChannelsView(actor, number, (await searchParams).channel));
  const href = `/runs/${number}/channels`;
  const shown = view.channels.filter(({ channel }) => !view.chosen || channel === view.chosen);
  return (
    <RunPage head={view.head} at="channels">
      <p className="row">
        {view.chosen ? <Link href={href}>All channels</Link> : null}
        {view.channels.map(({ channel, label }) => (
          <Link key={channel} href={`${href}?channel=${encodeURIComponent(channel)}`}>
            {channel} {label}
          </Link>
        ))}
      </p>
      {shown.map((one) => (
        <Section
          key={one.channel}
          title={`Channel ${one.channel}`}
          note={`${one.label}${one.type ? `, type ${one.type}` : ""}, place ${one.place}. ${one.seconds.length} readings${one.reversed > 0 ? `, ${one.reversed} with the leads reversed` : ""}.`}
          wide
        >
          {one.seconds.length === 0 ? (
            <p>This channel has no readings.</p>
          ) : (
            <ChannelChart
              view={{
                title: `Channel ${one.channel}, ${one.label}`,
                unit: "µV",
                seconds: one.seconds,
                values: one.microvolts,
                windows: view.windows.map((window) => ({ ...window, state: "accepted" as const })),
              }}
            />
          )}
        </Section>
      ))}
    </RunPage>
  );
}
