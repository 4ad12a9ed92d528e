import { type SearchEvent, type SearchOrder, searchEvents, unpackWeather } from "@/lib/domain/forecast";

/*
 * The browser's worker for a search of settings: one order in its life, ended from outside.
 */

export type SearchWorkerOrder = Omit<SearchOrder, "weather"> & { readonly weather: ArrayBuffer };

type Port = {
  postMessage(event: SearchEvent): void;
  onmessage: ((order: MessageEvent<SearchWorkerOrder>) => void) | null;
};
const port = globalThis as unknown as Port;

port.onmessage = ({ data }) => {
  for (const event of searchEvents({ ...data, weather: unpackWeather(data.weather) }))
    port.postMessage(event);
};
