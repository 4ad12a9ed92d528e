import type { Metadata } from "next";
import { WebhookCard } from "@/components/api/webhook-card";
import { WebhookForm } from "@/components/api/webhook-form";
import { CompanyTabs } from "@/components/company/company-tabs";
import { PageHeader } from "@/components/shell/page-header";
import { TextLink } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { EmptyState } from "@/components/ui/empty-state";
import { FollowWork } from "@/components/work/follow-work";
import { pageScope } from "@/lib/server/page";
import { webhooksView } from "@/lib/services/webhooks";
import { add, remove, resend, tryOut, turn } from "./actions";

export const metadata: Metadata = { title: "Webhooks" };

export default async function WebhooksPage() {
  const scope = await pageScope("tokens.manage");
  const { webhooks, timeZone } = await webhooksView(scope);
  const isUnderWay = webhooks.some(({ deliveries, pausedAt }) =>
    deliveries.some(({ state }) => pausedAt === null && state === "waiting"),
  );
  return (
    <>
      <PageHeader
        title="Webhooks"
        crumbs={[{ href: "/company", label: "Company" }]}
        lead="A webhook tells a program of yours when something happens. Every delivery is signed, tried again with growing pauses for half an hour, and stands here."
      />
      <CompanyTabs current="webhooks" />
      <div className="mt-5 grid items-start gap-5 xl:grid-cols-[minmax(0,1fr)_22rem]">
        <div className="grid min-w-0 gap-5">
          {webhooks.length === 0 ? (
            <EmptyState title="No webhooks yet">
              Add the address of a program that is to be told what happens.
            </EmptyState>
          ) : null}
          {webhooks.map((webhook) => (
            <WebhookCard
              key={webhook.id}
              webhook={webhook}
              timeZone={timeZone}
              actions={{ turn, remove, tryOut, resend }}
            />
          ))}
        </div>
        <Card title="New webhook">
          <WebhookForm add={add} />
          <p className="mt-4 border-t border-rule pt-3 text-sm">
            <TextLink href="/api-reference#webhooks">How a program listens</TextLink>: what it is sent, and
            how it checks the signature.
          </p>
        </Card>
      </div>
      <FollowWork active={isUnderWay} />
    </>
  );
}
