import { TabLinks } from "@/components/ui/tab-links";

const TABS = [
  { key: "brand", href: "/company", label: "Brand" },
  { key: "members", href: "/company/members", label: "Members" },
  { key: "activity", href: "/company/activity", label: "Activity" },
  { key: "tokens", href: "/company/tokens", label: "API tokens" },
  { key: "webhooks", href: "/company/webhooks", label: "Webhooks" },
  { key: "data", href: "/company/data", label: "Data" },
  { key: "work", href: "/company/work", label: "Background work" },
] as const;

/** The parts of the company's own pages. */
export function CompanyTabs({ current }: { readonly current: (typeof TABS)[number]["key"] }) {
  return (
    <TabLinks
      label="Company"
      tabs={TABS.map(({ key, href, label }) => ({ href, label, current: key === current }))}
    />
  );
}
