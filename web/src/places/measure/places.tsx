// Every mark, place and end with its ±.

import { useShop } from "../../shop";
import { coordinate, degrees, small } from "../../units";

export function Places() {
  const { view, unit } = useShop();
  const places = view.measure.places;
  if (places.length === 0) {
    return null;
  }
  return (
    <section class="card">
      <h2>Places</h2>
      <div class="scroll" tabIndex={0} role="region" aria-label="places">
        <table>
          <caption>x rearwards, y to the right, z up, in {unit}; ± 19 in 20</caption>
          <thead>
            <tr><th scope="col">place</th><th scope="col">x</th><th scope="col">y</th><th scope="col">z</th><th scope="col">±</th></tr>
          </thead>
          <tbody>
            {places.map((place) => (
              <tr key={place.name}>
                <th scope="row" title={place.place ?? ""}>{place.name}</th>
                {place.at === null ? (
                  <td colSpan={4} class="words">not found yet</td>
                ) : (
                  <>
                    {place.at.map((value, axis) => <td key={axis}>{coordinate(value, unit)}</td>)}
                    <td>
                      {place.plusMinus === null ? "not known" : small(place.plusMinus, unit).replace(/ (mm|in)$/, "")}
                      {place.turnPlusMinus === null || place.turnPlusMinus === 0 ? null : <small>, {degrees(place.turnPlusMinus)}</small>}
                    </td>
                  </>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
