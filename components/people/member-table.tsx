import { Badge } from "@/components/ui/badge";
import { type Column, Table } from "@/components/ui/table";
import type { MemberRow, Send } from "./member-actions";
import { MemberRemoval } from "./member-removal";
import { MemberRoleForm } from "./member-role-form";

type Props = {
  readonly members: readonly MemberRow[];
  readonly setRole: Send;
  readonly remove: Send;
};

/** Everyone who works here. */
export function MemberTable({ members, setRole, remove }: Props) {
  const columns: readonly Column<MemberRow>[] = [
    {
      key: "name",
      head: "Member",
      rowHead: true,
      cell: ({ name, email, isYou }) => (
        <>
          {name} {isYou ? <Badge tone="muted">you</Badge> : null}
          <span className="block font-normal break-all text-muted">{email}</span>
        </>
      ),
    },
    {
      key: "role",
      head: "Role",
      cell: (member) => (
        <div className="flex flex-wrap items-start gap-2">
          <MemberRoleForm member={member} setRole={setRole} />
          <MemberRemoval member={member} remove={remove} />
        </div>
      ),
    },
  ];
  return <Table label="Members" columns={columns} rows={members} rowKey={(member) => member.userId} />;
}
