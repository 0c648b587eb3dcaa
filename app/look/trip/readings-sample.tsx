import { QuantityField } from "#app/design/quantity-field.tsx";
import styles from "./readings-sample.module.css";

const STEPS = [
  { step: 1, ductPressurePa: "48.6", fanPressurePa: "131", restrictor: "medium", flow: "412" },
  { step: 2, ductPressurePa: "35.1", fanPressurePa: "88.4", restrictor: "medium", flow: "339" },
  { step: 3, ductPressurePa: "24.8", fanPressurePa: "21", restrictor: "medium", flow: "165", isDoubtful: true },
];

/** Ten readings at once are an expert's task: one table, a row a step. On a phone each row becomes a small form. */
export function ReadingsSample() {
  return (
    <table className={styles.readings}>
      <caption>Readings of the total leakage test, pushing air in</caption>
      <thead>
        <tr>
          <th scope="col">Step</th>
          <th scope="col">Duct pressure</th>
          <th scope="col">Fan pressure</th>
          <th scope="col">Restrictor</th>
          <th scope="col" className={styles.flow}>
            Flow (cfm)
          </th>
        </tr>
      </thead>
      <tbody>
        {STEPS.map(({ step, ductPressurePa, fanPressurePa, restrictor, flow, isDoubtful }) => (
          <tr key={step}>
            <th scope="row">{step}</th>
            <td>
              <QuantityField
                label={`Duct pressure at step ${step}, in pascals`}
                isLabelHidden
                unit="Pa"
                defaultValue={ductPressurePa}
              />
            </td>
            <td>
              <QuantityField
                label={`Fan pressure at step ${step}, in pascals`}
                isLabelHidden
                unit="Pa"
                defaultValue={fanPressurePa}
              />
            </td>
            <td>{restrictor}</td>
            <td className={styles.flow}>
              {flow}
              {isDoubtful ? <span className={styles.doubtful}>doubtful</span> : null}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
