import {
  type SearchEvent,
  type SearchOrder,
  type SearchTask,
  searchEvents,
  unpackWeather,
} from "@/lib/domain/forecast";

/*
 * The browser's worker for a share of a search. The order comes once, with the first task; a newer task stops the one before between two
 * years.
 */

export type SearchWorkerOrder = {
  readonly order: (Omit<SearchOrder, "weather"> & { readonly weather: ArrayBuffer }) | null;
  readonly task: SearchTask;
};

type Port = {
  postMessage(event: SearchEvent): void;
  onmessage: ((order: MessageEvent<SearchWorkerOrder>) => void) | null;
};
const port = globalThis as unknown as Port;
let order: SearchOrder | null = null;
let latest = 0;

port.onmessage = ({ data }) => {
  latest += 1;
  if (data.order !== null) order = { ...data.order, weather: unpackWeather(data.order.weather) };
  void obey(data.task, latest);
};

async function obey(task: SearchTask, mine: number): Promise<void> {
  if (order === null) return;
  for (const event of searchEvents(order, task)) {
    port.postMessage(event);
    // A turn of the loop, so that the next task is heard.
    await new Promise((resolve) => setTimeout(resolve));
    if (mine !== latest) return;
  }
}
