import type { Metadata } from "next";
import { CompanyTabs } from "@/components/company/company-tabs";
import { MemberInvitations } from "@/components/people/member-invitations";
import { MemberInviteForm } from "@/components/people/member-invite-form";
import { MemberTable } from "@/components/people/member-table";
import { PageHeader } from "@/components/shell/page-header";
import { Card } from "@/components/ui/card";
import { pageScope } from "@/lib/server/page";
import { membersView } from "@/lib/services/members";
import { invite, remove, setRole, withdraw } from "./actions";

export const metadata: Metadata = { title: "Members" };

export default async function MembersPage() {
  const scope = await pageScope("members.manage");
  const { members, invitations, timeZone } = await membersView(scope);
  return (
    <>
      <PageHeader
        title="Members"
        crumbs={[{ href: "/company", label: "Company" }]}
        lead="Owners see and change everything, office managers run jobs, field techs fill in the jobs assigned to them."
      />
      <CompanyTabs current="members" />
      <div className="mt-5 grid items-start gap-5 xl:grid-cols-[minmax(0,1fr)_22rem]">
        <div className="grid min-w-0 gap-5">
          <MemberTable members={members} setRole={setRole} remove={remove} />
          <section className="min-w-0">
            <h2 className="mb-2 text-lg">Open invitations</h2>
            <MemberInvitations invitations={invitations} timeZone={timeZone} withdraw={withdraw} />
          </section>
        </div>
        <Card title="Invite someone">
          <MemberInviteForm invite={invite} />
        </Card>
      </div>
    </>
  );
}
