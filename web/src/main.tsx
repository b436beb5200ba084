import { render } from "preact";
import { Page } from "./page";
import "./page.css";

const root = document.getElementById("page");
if (root !== null) {
  render(<Page />, root);
}
