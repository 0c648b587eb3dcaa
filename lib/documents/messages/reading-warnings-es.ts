import type { WarningSentences } from "./warning-words.ts";

/** What the engine warns of in readings, instruments and tests, in Spanish by its code: what, why, what next. */
export const READING_WARNINGS_ES: WarningSentences = {
  "difference-within-doubt": [
    [
      "The leakage of {leakage} cfm at 50 Pa has a standard uncertainty of {doubt} cfm.",
      "La fuga de {leakage} cfm a 50 Pa tiene una incertidumbre estándar de {doubt} cfm.",
    ],
    [
      "It is the small difference of two large flows: all that can be said is that, 19 times in 20, at most {most} cfm leak to outside.",
      "Es la diferencia chica de dos caudales grandes: solo se puede decir que, 19 veces de 20, salen hacia afuera {most} cfm como máximo.",
    ],
    [
      "Measure the leakage to outside with a fan on the ducts and the house at the same pressure.",
      "Mida la fuga hacia afuera con un ventilador en los ductos y la casa a la misma presión.",
    ],
  ],
  "restrictor-changed": [
    [
      "The flow restrictor was changed from {before} to {after} at step {step}.",
      "En el paso {step} se cambió la placa de flujo de {before} a {after}.",
    ],
    [
      "The flow restrictor was changed from {before} to {after} at step {step} and {count} more.",
      "En el paso {step} se cambió la placa de flujo de {before} a {after}, y {count} veces más.",
    ],
    [
      "Each step is read by the calibration of its own; what two restrictors differ by looks like scatter.",
      "Cada paso se lee con la calibración de su propia placa; lo que difieren dos placas parece dispersión.",
    ],
    [
      "Where the line through the steps breaks there, read one step with both.",
      "Si la línea de los pasos se quiebra ahí, lea un paso con las dos.",
    ],
  ],
  "model-doubt-left-out": [
    ["The doubt is that of the readings alone.", "La duda es solo la de las lecturas."],
    [
      "Real leaks stand at many pressures, the model at one a side: that alone is worth 1.3 % of the air handler's flow.",
      "Las fugas reales están a muchas presiones; el modelo, a una por lado: eso solo vale 1.3 % del caudal del ventilador.",
    ],
    ["Enter the flow of the air handler.", "Ponga el caudal del ventilador."],
  ],
  "calibration-expired": [
    [
      "The calibration of {name} was due on {due}, before the test of {used}.",
      "La calibración de {name} vencía el {due}, antes de la prueba del {used}.",
    ],
    [
      "Programs may refuse a reading made after that day; the warning stands in every document that uses it.",
      "Un programa puede rechazar una lectura hecha después de ese día; el aviso va en cada papel que la usa.",
    ],
    [
      "Have it calibrated and look whether its numbers moved, or test again with another instrument.",
      "Mándelo calibrar y vea si sus números cambiaron, o pruebe otra vez con otro instrumento.",
    ],
  ],
  "invented-instrument": [
    ["{name} does not exist.", "{name} no existe."],
    ["Its curves are invented for demonstration.", "Sus curvas son inventadas, para mostrar cómo funciona."],
    ["Enter your own instrument with its calibration.", "Ponga su propio instrumento con su calibración."],
  ],
  "exponent-outside-range": [
    [
      "The exponent of the curve is {exponent}, outside 0.5 to 1.",
      "El exponente de la curva es {exponent}, fuera de 0.5 a 1.",
    ],
    [
      "Leaks lie between turbulent (0.5) and laminar flow (1); something changed while you read.",
      "Las fugas están entre flujo turbulento (0.5) y laminar (1); algo cambió mientras se leía.",
    ],
    [
      "Look for masking or a damper that lifts as the pressure rises, then repeat from the highest pressure down.",
      "Busque una tapa o compuerta que se levanta al subir la presión y repita de la presión más alta hacia abajo.",
    ],
    [
      "Look for a flap that closes as the pressure rises, a wrong restrictor or a baseline left in, then repeat.",
      "Busque una compuerta que se cierra al subir la presión, una placa equivocada o una presión base sin restar, y repita.",
    ],
  ],
  "fit-scatters": [
    [
      "The readings scatter about the curve (R² {rSquared}, below 0.98).",
      "Las lecturas se dispersan alrededor de la curva (R² {rSquared}, menos de 0.98).",
    ],
    [
      "Wind, a door that moved or a misread step makes the value at 25 Pa uncertain.",
      "Viento, una puerta que se movió o un paso mal leído hacen dudoso el valor a 25 Pa.",
    ],
    [
      "Read the step that lies farthest from the curve again, with longer averages.",
      "Lea otra vez el paso más lejano de la curva, con promedios más largos.",
    ],
  ],
  "few-points": [
    ["The curve stands on {count} pressures.", "La curva se apoya en {count} presiones."],
    [
      "A compliant multi-point test takes at least 5, and its interval is wide with fewer.",
      "Una prueba de varios puntos conforme usa al menos 5; con menos, su intervalo es ancho.",
    ],
    ["Add steps between 10 and 50 Pa.", "Agregue pasos entre 10 y 50 Pa."],
  ],
  "retest-other-method": [
    [
      "The retest {later} was made by another method than {earlier}.",
      "La segunda prueba {later} se hizo con otro método que {earlier}.",
    ],
    [
      "Two methods err in different ways, so their difference is not only what was sealed.",
      "Dos métodos fallan de modo distinto, así que su diferencia no es solo lo que se selló.",
    ],
    [
      "Test again by the method that was used before the work.",
      "Pruebe otra vez con el método que se usó antes del trabajo.",
    ],
  ],
  "retest-other-fan": [
    [
      "The retest {later} was made with another fan than {earlier}.",
      "La segunda prueba {later} se hizo con otro ventilador que {earlier}.",
    ],
    [
      "The error of one fan cancels between before and after; that of two does not.",
      "El error de un mismo ventilador se cancela entre antes y después; el de dos, no.",
    ],
    [
      "Use the same fan, restrictor and direction for both where you can.",
      "Use el mismo ventilador, placa y sentido en las dos si puede.",
    ],
  ],
  "retest-other-direction": [
    [
      "The retest {later} was made in the other direction than {earlier}.",
      "La segunda prueba {later} se hizo en el sentido contrario de {earlier}.",
    ],
    [
      "Flaps, film and loose joints leak differently when air is pushed and when it is pulled.",
      "Compuertas, película y uniones flojas fugan distinto cuando el aire se empuja y cuando se jala.",
    ],
    [
      "Test again in the direction that was used before the work.",
      "Pruebe otra vez en el sentido que se usó antes del trabajo.",
    ],
  ],
  "retest-other-restrictor": [
    [
      "The retest {later} was made with another flow restrictor than {earlier}.",
      "La segunda prueba {later} se hizo con otra placa que {earlier}.",
    ],
    [
      "Each restrictor has a calibration of its own, so a part of its error does not cancel. After sealing it is often needed.",
      "Cada placa tiene su calibración, así que parte de su error no se cancela. Después de sellar muchas veces hace falta.",
    ],
    [
      "Where one restrictor reads both within its span, use that one; else leave it as it is.",
      "Si una placa lee las dos dentro de su rango, use esa; si no, déjelo así.",
    ],
  ],
  "retest-other-gauge": [
    [
      "The retest {later} was made with another gauge than {earlier}.",
      "La segunda prueba {later} se hizo con otro medidor que {earlier}.",
    ],
    [
      "The error of one gauge cancels between before and after; that of two does not.",
      "El error de un mismo medidor se cancela entre antes y después; el de dos, no.",
    ],
    ["Use the same gauge for both where you can.", "Use el mismo medidor en las dos si puede."],
  ],
  "fan-pressure-outside-span": [
    [
      "The fan pressure of {read} is below the span of {restrictor} ({low} to {high}).",
      "La presión del ventilador, {read}, está por debajo del rango de {restrictor} ({low} a {high}).",
    ],
    [
      "The fan pressure of {read} is above the span of {restrictor} ({low} to {high}).",
      "La presión del ventilador, {read}, está por encima del rango de {restrictor} ({low} a {high}).",
    ],
    [
      "Outside its span the calibration is a guess, and the flow may be off by a tenth or more.",
      "Fuera de su rango la calibración es una conjetura, y el caudal puede errar una décima parte o más.",
    ],
    [
      "Change to {restrictor}; expect about {pressure} on the fan.",
      "Cambie a {restrictor}; espere cerca de {pressure} en el ventilador.",
    ],
    [
      "No restrictor of this fan reads so little: use a smaller fan, or report the leakage as below its lowest reading.",
      "Ninguna placa de este ventilador lee tan poco: use uno más chico, o reporte la fuga como menor que su lectura más baja.",
    ],
    [
      "No restrictor of this fan reads so much: look for an open register or a loose duct, or use a larger fan.",
      "Ninguna placa de este ventilador lee tanto: busque una rejilla abierta o un ducto suelto, o use uno más grande.",
    ],
  ],
  "wrong-sign": [
    [
      "The pressure reads {pressure} while the fan is {doing}.",
      "La presión marca {pressure} mientras el ventilador está {doing}.",
    ],
    [
      "Pushing must give a positive pressure; two hoses are swapped, or the direction is entered wrongly.",
      "Al empujar la presión debe ser positiva; hay dos mangueras cambiadas, o el sentido está mal puesto.",
    ],
    [
      "Pulling must give a negative pressure; two hoses are swapped, or the direction is entered wrongly.",
      "Al jalar la presión debe ser negativa; hay dos mangueras cambiadas, o el sentido está mal puesto.",
    ],
    [
      "Check which is the signal hose and which the reference hose, then the direction of the fan.",
      "Revise cuál es la manguera de señal y cuál la de referencia, y luego el sentido del ventilador.",
    ],
  ],
  "baseline-large": [
    [
      "The baseline of {baseline} is more than a fifth of the reading of {pressure}.",
      "La presión base de {baseline} pasa de la quinta parte de la lectura de {pressure}.",
    ],
    [
      "Wind or a running fan drives part of what the gauge shows, and it changes while you read.",
      "Viento o un ventilador andando mueven parte de lo que marca el medidor, y cambia mientras se lee.",
    ],
    [
      "Switch off every fan, close the doors to wind, average over a minute, or come back on a calmer day.",
      "Apague todo ventilador, cierre las puertas al viento, promedie un minuto, o vuelva un día más calmado.",
    ],
  ],
  "reference-not-reached": [
    [
      "The highest pressure was {highest}; the leakage at {reference} is extrapolated.",
      "La presión más alta fue {highest}; la fuga a {reference} está extrapolada.",
    ],
    [
      "The exponent that carries the value up is assumed, which adds to its doubt.",
      "El exponente que lleva el valor hasta ahí es supuesto, lo que aumenta su duda.",
    ],
    [
      "Look for masking that came off, then for a disconnected duct; then take a larger restrictor or fan. If none helps, keep the value: it stays marked as extrapolated.",
      "Busque una tapa que se soltó, luego un ducto suelto; luego tome una placa o un ventilador más grande. Si nada ayuda, deje el valor: queda marcado como extrapolado.",
    ],
  ],
  "density-not-corrected": [
    [
      "The flow was entered as the gauge showed it, at {elevation} ft.",
      "El caudal se puso como lo marcó el medidor, a {elevation} pies de altura.",
    ],
    [
      "In thin air a test fan moves about {share} % more than its standard-air reading says.",
      "Con aire delgado el ventilador mueve cerca de {share} % más de lo que dice su lectura para aire estándar.",
    ],
    [
      "Enter the fan pressure and the restrictor instead, or confirm that the gauge corrected for density.",
      "Ponga mejor la presión del ventilador y la placa, o confirme que el medidor corrigió la densidad.",
    ],
  ],
  "leftover-pressure": [
    ["Ducts and house still differed by {pressure}.", "Ductos y casa aún diferían en {pressure}."],
    [
      "Air then leaks between ducts and rooms too, and counts as leakage to outside.",
      "Entonces el aire también pasa entre ductos y cuartos, y cuenta como fuga hacia afuera.",
    ],
    [
      "Adjust the duct fan until ducts to house reads 0 Pa, within half a pascal, and read again.",
      "Ajuste el ventilador de los ductos hasta que entre ductos y casa marque 0 Pa, a medio pascal, y lea otra vez.",
    ],
  ],
  "to-outside-above-total": [
    [
      "The leakage to outside ({outside}) is above the total ({total}).",
      "La fuga hacia afuera ({outside}) es mayor que la total ({total}).",
    ],
    [
      "What reaches outside is a part of the total, so one of the two readings is wrong.",
      "Lo que sale afuera es parte del total, así que una de las dos lecturas está mal.",
    ],
    [
      "Check the masking and the restrictor of the total test, then that house and ducts stood at the same pressure.",
      "Revise las tapas y la placa de la prueba total, y luego que casa y ductos estaban a la misma presión.",
    ],
  ],
  "reading-repeated": [
    [
      "Two steps of this test show the same pressure and flow to the last digit.",
      "Dos pasos de esta prueba marcan la misma presión y caudal hasta la última cifra.",
    ],
    [
      "The tests {earlier} and {later} show the same pressure and flow to the last digit.",
      "Las pruebas {earlier} y {later} marcan la misma presión y caudal hasta la última cifra.",
    ],
    [
      "Real readings differ in the last digit; a copied number hides what was measured.",
      "Las lecturas reales difieren en la última cifra; un número copiado esconde lo que se midió.",
    ],
    ["Read again, or note why the numbers are the same.", "Lea otra vez, o anote por qué los números son iguales."],
  ],
  "marked-doubtful": [
    ["Steps {steps} are kept but marked doubtful.", "Los pasos {steps} se quedan, pero marcados como dudosos."],
    ["Step {step} is kept but marked doubtful.", "El paso {step} se queda, pero marcado como dudoso."],
    [
      "Whoever read the gauge did not trust it, and the result stands on it.",
      "Quien leyó el medidor no le tuvo confianza, y el resultado se apoya en él.",
    ],
    ["Read them again when you can.", "Léalos otra vez cuando pueda."],
    ["Read it again when you can.", "Léalo otra vez cuando pueda."],
  ],
  "several-tests-of-one-kind": [
    [
      "“{other}” measures the same as “{best}” and was less sure.",
      "“{other}” mide lo mismo que “{best}” y es menos segura.",
    ],
    [
      "Only the surest of several tests of one kind is used.",
      "De varias pruebas de una clase solo se usa la más segura.",
    ],
    [
      "Nothing to do, unless you trust the other one more: then mark this one's stage differently or remove it.",
      "No hay que hacer nada, salvo que confíe más en la otra: entonces cambie la etapa de esta o quítela.",
    ],
  ],
  "whole-house-test-beside-system-tests": [
    [
      "A whole-house test stands beside tests of every system alone.",
      "Hay una prueba de toda la casa junto a pruebas de cada sistema.",
    ],
    [
      "The systems' own tests say more, so the whole-house test is not used.",
      "Las pruebas de cada sistema dicen más, así que no se usa la de toda la casa.",
    ],
    ["Compare it with the sum of the systems' tests.", "Compárela con la suma de las pruebas de los sistemas."],
  ],
};
