export { DESIGN_METHOD, type DesignConditions, designConditions } from "./design-conditions";
export { parseEpw } from "./parse-epw";
export { weatherRules } from "./rules";
export { type Direction, type SunPosition, sunDirection, sunPosition } from "./sun";
export {
  irradianceFacing,
  type Light,
  surfaceFacing,
  type Tilt,
  tiltedIrradiance,
} from "./tilted-irradiance";
export {
  WEATHER_CHANNELS,
  type Weather,
  type WeatherChannel,
  type WeatherGap,
  type WeatherPlace,
} from "./weather";
