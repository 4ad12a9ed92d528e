import type { ReactNode } from "react";
import { TextLink } from "@/components/ui/button";
import { Notice } from "@/components/ui/notice";
import { HOUSE_ASSUMPTION_WORDS, SYSTEM_ASSUMPTIONS } from "@/lib/domain/forecast";
import { simulationRules } from "@/lib/engineering/simulation";

/** The model, its limits and what it is not, in words. */
export function ModelText() {
  return (
    <div className="grid max-w-3xl gap-8">
      <Notice kind="information" title="What it is not">
        <p>
          It is not a load calculation and not a code-compliance method. It does not replace accepted
          software, the manufacturer’s instructions, local codes or licensed practice. It compares ways to
          build and set one system in one house, and says how sure that is.
        </p>
      </Notice>
      <Chapter title="What is computed">
        <p>
          Every minute of a year, 525,600 of them, after two weeks to settle. Outdoors comes from the job’s
          weather file, hour by hour, with straight lines between. Each minute the thermostat decides by its
          own settings, the coil takes heat and water by its equipment model, and two balances say what the
          rooms become.
        </p>
        <List>
          <li>
            Heat: air with light furnishings, and one heavy mass. In and out through the enclosure, with
            outdoor air, from the sun, from people and appliances, from the fan.
          </li>
          <li>
            Water: in the air and in a buffer of furnishings that follows it. In from people, household and
            outdoor air; out by the coil’s drain and the dehumidifier.
          </li>
          <li>
            The coil: equipment that holds a coil temperature by its rated point, its ceiling and its lag
            after a stage change; any other by the maker’s table at the airflow the ducts give. What it takes
            first wets the coil; what stays there dries back while the fan blows after a run.
          </li>
          <li>
            Leakage follows wind and temperature difference; ventilation is what the load summary says,
            balanced.
          </li>
        </List>
      </Chapter>
      <Chapter title="The house behind a load summary">
        <p>
          Conductance is what outdoor air leaves over of the heating load. The sun is what conduction, outdoor
          air and inside gains leave over of the cooling load at the design hours of the weather’s own light.
          Everything else is assumed; each assumption stands with the forecast, with its basis, and can be
          changed there:
        </p>
        <List>
          {Object.values(HOUSE_ASSUMPTION_WORDS).map(({ label }) => (
            <li key={label}>{label}</li>
          ))}
        </List>
        <p className="mt-3">And of equipment and controls, where no record says otherwise:</p>
        <List>
          {Object.values(SYSTEM_ASSUMPTIONS).map(({ label, value, unit, why }) => (
            <li key={label}>
              {label}: {value} {unit}. <span className="text-muted">{why}.</span>
            </li>
          ))}
        </List>
      </Chapter>
      <Chapter title="Why a range">
        <p>
          Leakage, the water a family gives off, what furnishings hold and the weather of a real year are not
          known. Each is drawn between two ends, ten times, evenly, always with the same draws; the range is
          the least and the most of those years. It is not a probability: a house may lie outside it, and that
          is a finding once its log says so.
        </p>
      </Chapter>
      <Chapter title="What it leaves out">
        <List>
          <li>One well-mixed zone: no rooms of their own, no closed doors.</li>
          <li>Ducts inside the insulated space: no heat or leakage of ducts outside it.</li>
          <li>No sky radiation, no wet ground beyond the pints a day in the load summary.</li>
          <li>The same people, gains and water every day; windows stay shut.</li>
          <li>The equipment as the maker says, charged and clean.</li>
          <li>
            In winter it is kept warm; a heat pump’s own electricity then is not counted, auxiliary heat is.
          </li>
          <li>
            Outside a maker’s table the nearest line stands: below its coolest outdoor temperature and outside
            its wet bulbs the total stays, and below the lowest wet bulb the coil dries along the line. Hotter
            than the table is refused.
          </li>
        </List>
      </Chapter>
      <Chapter title="How it is checked">
        <p>
          Heat and water of every simulated year are added up; what does not close is said in the last row of
          each forecast, and more than one millionth is a defect. Steady states, step responses, the published
          table of water that dries off a coil, the sun’s place and a second program in another language are
          tests of the product. The same inputs give the same numbers to the last digit in every browser and
          on the server: the fingerprint beside a forecast is the same in both. The equations and what they
          rest on:
        </p>
        <dl className="mt-2 grid gap-2">
          {Object.values(simulationRules).map(({ id, title, equation, basis }) => (
            <div key={id}>
              <dt className="font-medium">{title}</dt>
              <dd className="text-sm">
                {equation}{" "}
                <span className="text-muted">
                  ({basis.source}; {basis.certainty})
                </span>
              </dd>
            </div>
          ))}
        </dl>
        <p className="mt-3">
          All rules stand on <TextLink href="/rules">the rules page</TextLink>.
        </p>
      </Chapter>
    </div>
  );
}

function Chapter({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section>
      <h2 className="mb-2 text-lg">{title}</h2>
      {children}
    </section>
  );
}

function List({ children }: { readonly children: ReactNode }) {
  return <ul className="mt-2 grid list-disc gap-1 pl-5">{children}</ul>;
}
