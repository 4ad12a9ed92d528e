/** Everything a phone computes, in one piece that is loaded after the screens. */
export { dryAnswer } from "../dry-answer";
export { airflowByMethod } from "./airflow-by-method";
export { evaluateJob } from "./index";
