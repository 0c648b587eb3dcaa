import type { WarningSentences } from "./warning-words.ts";

const ANOTHER_STATION = [
  "See whether another station or a weather file of the place fits better.",
  "Vea si otra estación o un archivo del clima del lugar va mejor.",
] as const;

/** What the engine warns of in bills, weather, the plan and the result, in Spanish by its code: what, why, what next. */
export const RESULT_WARNINGS_ES: WarningSentences = {
  "bills-less-than-a-year": [
    ["The bills cover {days} days.", "Los recibos cubren {days} días."],
    [
      "Heating and cooling cannot both be told from base use without a whole year.",
      "Sin un año entero no se distinguen calefacción y aire frío del consumo de base.",
    ],
    ["Add the missing bills.", "Agregue los recibos que faltan."],
  ],
  "bill-reversed": [
    [
      "The bill ends on {end}, before it starts on {start}.",
      "El recibo termina el {end}, antes de empezar el {start}.",
    ],
    ["It has no days, so its use belongs nowhere.", "No tiene días, así que su consumo no va en ninguna parte."],
    ["Correct its dates; it is left out until then.", "Corrija sus fechas; mientras tanto no cuenta."],
  ],
  "bill-long": [
    ["The bill covers {days} days.", "El recibo cubre {days} días."],
    [
      "Long periods mix cold and mild weather and blur the balance temperature.",
      "Los periodos largos mezclan frío y templado y borran desde dónde hace falta calor o frío.",
    ],
    [
      "Enter it month by month if the meter was read in between.",
      "Póngalo mes por mes si el medidor se leyó entre medio.",
    ],
  ],
  "bill-estimated": [
    [
      "The bill from {start} is an estimate of the utility.",
      "El recibo desde el {start} es una estimación de la compañía.",
    ],
    ["Only the sum with the next read bill is right.", "Solo es correcta la suma con el siguiente recibo leído."],
    ["It is joined with the next bill that was read.", "Se junta con el siguiente recibo que se leyó."],
  ],
  "bill-overlap": [
    [
      "The bill from {start} overlaps the one before by {days} days.",
      "El recibo desde el {start} se encima {days} días con el anterior.",
    ],
    ["Those days would count twice.", "Esos días contarían dos veces."],
    [
      "Correct the dates, or remove the bill entered twice; it is left out until then.",
      "Corrija las fechas, o quite el recibo puesto dos veces; mientras tanto no cuenta.",
    ],
  ],
  "bill-missing": [
    ["{days} days before {start} have no bill.", "{days} días antes del {start} no tienen recibo."],
    ["What is missing is filled by the model, not by a reading.", "Lo que falta lo llena el modelo, no una lectura."],
    ["Add the missing bill.", "Agregue el recibo que falta."],
  ],
  "bill-doubled": [
    [
      "The use of the bill from {start} is far above both bills beside it.",
      "El consumo del recibo desde el {start} es mucho mayor que el de los dos de al lado.",
    ],
    ["It may hold two months, or make up for an estimate.", "Puede traer dos meses, o corregir una estimación."],
    [
      "Check the reading; join it with the bill that is too low.",
      "Revise la lectura; júntelo con el recibo demasiado bajo.",
    ],
  ],
  "bills-not-used": [
    ["The {fuel} bills are not used: {problem}.", "Los recibos de {fuel} no se usan: {problem}."],
    [
      "The {model} model needs at least {needed} periods, not {count}",
      "el modelo necesita al menos {needed} periodos, no {count}",
    ],
    [
      "A season can be told from {least} usable bills or more, not from {count}",
      "una temporada se ve con {least} recibos útiles o más, no con {count}",
    ],
    ["All bills are zero", "todos los recibos son cero"],
    ["Add bills, best a whole year of them.", "Agregue recibos, mejor un año entero."],
    [
      "A season is told from how bills follow the weather; these do not show it.",
      "Una temporada se ve en cómo los recibos siguen al clima; estos no la muestran.",
    ],
    [
      "Add bills, best a whole year of them, or fit heating or cooling alone.",
      "Agregue recibos, mejor un año entero, o vea solo la calefacción o solo el aire frío.",
    ],
    ["Enter the use of each period.", "Ponga el consumo de cada periodo."],
  ],
  "bills-show-no-season": [
    [
      "The {fuel} bills do not show how much of them is for {season}.",
      "Los recibos de {fuel} no muestran cuánto es de {season}.",
    ],
    [
      "{reason} The {season} may be rare, or something else on the meter hides it.",
      "{reason} Puede que se use poco ({season}), o que otra cosa en el medidor lo tape.",
    ],
    ["No season can be told from these bills.", "En estos recibos no se ve ninguna temporada."],
    ["Bills without any season fit these as well.", "Recibos sin temporada van igual de bien con estos."],
    [
      "The temperature explains only {share} % of how these bills vary.",
      "La temperatura explica solo {share} % de cómo varían estos recibos.",
    ],
    [
      "It explains {share} % of how the bills vary, with the fewest parameters that do.",
      "Explica {share} % de cómo varían los recibos, con los menos parámetros que pueden.",
    ],
    [
      "Add bills until a whole year is there. Until then other evidence speaks, held to the {use} {unit} a year that the bills hold.",
      "Agregue recibos hasta tener un año entero. Mientras tanto vale otra evidencia, hasta {use} {unit} al año, que es lo que traen los recibos.",
    ],
  ],
  "evidence-missing": [
    [
      "The {season} need was to come from {evidence}, which say nothing of it.",
      "La necesidad de {season} debía salir de {evidence}, que no dicen nada de ella.",
    ],
    [
      "What was asked for is not there, so the next best evidence is used.",
      "Lo que se pidió no está, así que se usa la mejor evidencia que sigue.",
    ],
    ["Add it, or choose other evidence.", "Agréguela, o elija otra evidencia."],
  ],
  "load-evidence-disagrees": [
    [
      "By {other} the house would use {otherUse} of {fuel} a year for {season}, by the bills {usedUse}.",
      "Según {other} la casa usaría {otherUse} de {fuel} al año en {season}; según los recibos, {usedUse}.",
    ],
    [
      "By {other} the house would use {otherUse} of {fuel} a year for {season}, by the known use {usedUse}.",
      "Según {other} la casa usaría {otherUse} de {fuel} al año en {season}; según el consumo conocido, {usedUse}.",
    ],
    [
      "By {other} the house would use {otherUse} of {fuel} a year for {season}, by the building {usedUse}.",
      "Según {other} la casa usaría {otherUse} de {fuel} al año en {season}; según la casa misma, {usedUse}.",
    ],
    [
      "Likely the house is better insulated or tighter than usual for its age, is kept at a milder setting, stands partly empty, or something else helps, such as a stove or fans.",
      "Tal vez la casa está mejor aislada o cerrada de lo normal para su edad, tiene un ajuste más suave, está en parte vacía, o algo más ayuda, como una estufa o ventiladores.",
    ],
    [
      "Likely the house is leakier or less insulated than usual for its age, is kept at a stronger setting, or something else is on the same meter.",
      "Tal vez la casa está menos cerrada o aislada de lo normal para su edad, tiene un ajuste más fuerte, o hay otra cosa en el mismo medidor.",
    ],
    [
      "Likely the known use holds hot water, cooking or lights as well, or is of a harder year.",
      "Tal vez el consumo conocido incluye agua caliente, cocina o luces, o es de un año más duro.",
    ],
    [
      "Likely the known use is of a milder year, or leaves out a part of the season.",
      "Tal vez el consumo conocido es de un año más suave, o deja fuera parte de la temporada.",
    ],
    [
      "Likely the bills are of a harder year, or other uses that follow the weather are on the same meter.",
      "Tal vez los recibos son de un año más duro, o hay otros consumos que siguen al clima en el mismo medidor.",
    ],
    [
      "Likely the bills are of a milder year, or the house stood empty for a while.",
      "Tal vez los recibos son de un año más suave, o la casa estuvo vacía un tiempo.",
    ],
    [
      "The estimate goes by {used}. Ask about it, and correct what is wrong.",
      "El cálculo va según {used}. Pregunte, y corrija lo que esté mal.",
    ],
  ],
  "more-than-billed": [
    [
      "Heating, cooling and blower would use {use} of {fuel} a year, more than the {billed} on the bills.",
      "Calefacción, aire frío y ventilador usarían {use} de {fuel} al año, más que los {billed} de los recibos.",
    ],
    [
      "Nothing can be saved that is not used, so the evidence in use is too high.",
      "No se puede ahorrar lo que no se usa, así que la evidencia en uso es demasiado alta.",
    ],
    [
      "Go by the bills, or check the known use and the equipment.",
      "Vaya según los recibos, o revise el consumo conocido y el equipo.",
    ],
  ],
  "place-from-station": [
    [
      "Prices, climate zone and grid region are those around the weather station {station}.",
      "Precios, zona de clima y región eléctrica son los de alrededor de la estación {station}.",
    ],
    ["The job has no ZIP code.", "El trabajo no trae código postal."],
    ["Enter the ZIP code.", "Ponga el código postal."],
  ],
  "station-doubtful": [
    ["{station}: {doubt}", "{station}: {doubt}"],
    [
      "{hours} hours of its typical year are hotter than can be, going by the stations around it.",
      "{hours} horas de su año típico son más calientes de lo posible, según las estaciones de alrededor.",
    ],
    [
      "The header's longitude of 87.15° W lies in Lake Michigan; the town of that name and elevation is near 89.15° W.",
      "La longitud de su encabezado, 87.15° O, cae en el lago Michigan; el pueblo de ese nombre y altura está cerca de 89.15° O.",
    ],
    [
      "Hours that cannot be true distort the months and the design temperatures.",
      "Horas que no pueden ser ciertas tuercen los meses y las temperaturas de diseño.",
    ],
    [
      "Name another weather station, or leave the choice to the ZIP code.",
      "Nombre otra estación, o deje la elección al código postal.",
    ],
  ],
  "station-far": [
    [
      "The weather station {station} is {distance} miles away.",
      "La estación del tiempo {station} está a {distance} millas.",
    ],
    ["Over such a distance the weather may differ.", "A esa distancia el clima puede ser otro."],
    ANOTHER_STATION,
  ],
  "elevation-unknown": [
    ["The weather station was chosen by distance alone.", "La estación del tiempo se eligió solo por la distancia."],
    [
      "No town is near enough to tell the elevation of this ZIP code, and 1,000 ft cool the air by about 3.5 °F.",
      "Ningún pueblo está tan cerca que diga la altura de este código postal, y 1,000 pies enfrían el aire unos 3.5 °F.",
    ],
    ["In hills, enter the elevation of the house.", "En los cerros, ponga la altura de la casa."],
  ],
  "station-height": [
    [
      "The weather station lies {height} ft above the house.",
      "La estación del tiempo está {height} pies más alta que la casa.",
    ],
    [
      "The weather station lies {height} ft below the house.",
      "La estación del tiempo está {height} pies más baja que la casa.",
    ],
    ["1,000 ft cool the air by about 3.5 °F.", "1,000 pies enfrían el aire unos 3.5 °F."],
    ANOTHER_STATION,
  ],
  "climate-level-1991-2020": [
    [
      "Each month of the typical year was moved to the normals of 1991-2020 of {station}.",
      "Cada mes del año típico se llevó a las normales de 1991-2020 de {station}.",
    ],
    [
      "Typical years rest on weather of about 1976 to 2005, on average 1 °F cooler.",
      "Los años típicos vienen del clima de 1976 a 2005, en promedio 1 °F más fresco.",
    ],
    ["Nothing needs doing.", "No hay que hacer nada."],
  ],
  "climate-level-older": [
    ["The typical year stands at the level of about 1976 to 2005.", "El año típico está al nivel de 1976 a 2005."],
    [
      "No normals of 1991-2020 were observed beside this station; on average they are 1 °F warmer, so heating is somewhat overstated and cooling understated.",
      "Cerca de esta estación no hay normales de 1991-2020; en promedio son 1 °F más cálidas, así que la calefacción sale algo alta y el aire frío algo bajo.",
    ],
    ["Where it matters, use a recent weather file.", "Si importa, use un archivo del clima reciente."],
  ],
  "repair-not-priced": [
    [
      "The price book has no price for a material of “{repair}”.",
      "La lista de precios no tiene precio para un material de “{repair}”.",
    ],
    ["A repair without a price is not offered.", "Un arreglo sin precio no se ofrece."],
    ["Add the material to the price book.", "Agregue el material a la lista de precios."],
  ],
  "measure-does-not-fit": [
    ["The repair “{repair}” does not fit the leak “{leak}”.", "El arreglo “{repair}” no va con la fuga “{leak}”."],
    [
      "Each kind of leak has its own repairs, and a leak is repaired once.",
      "Cada clase de fuga tiene sus arreglos, y una fuga se arregla una vez.",
    ],
    [
      "Choose one of the repairs offered for this leak. Until then the measure is left out.",
      "Elija uno de los arreglos que van con esta fuga. Mientras tanto no cuenta.",
    ],
  ],
  "served-shares-do-not-add-up": [
    [
      "The shares of the house that the systems serve add up to {share} %.",
      "Las partes de la casa que atienden los sistemas suman {share} %.",
    ],
    ["Together they should serve the whole house.", "Juntos deben atender toda la casa."],
    [
      "Correct the shares. Until then they are scaled to 100 %.",
      "Corrija las partes. Mientras tanto se llevan a 100 %.",
    ],
  ],
  "static-above-nameplate": [
    [
      "After the work the static pressure of {system} is about {after} Pa, above the nameplate's {limit} Pa, as it is already.",
      "Después del trabajo la presión estática de {system} es de unos {after} Pa, más que los {limit} Pa de la placa, como ya es hoy.",
    ],
    [
      "After the work the static pressure of {system} is about {after} Pa, above the nameplate's {limit} Pa.",
      "Después del trabajo la presión estática de {system} es de unos {after} Pa, más que los {limit} Pa de la placa.",
    ],
    [
      "Tight ducts pass less air at the same pressure, so the blower works harder and the equipment may overheat or freeze.",
      "Los ductos cerrados dejan pasar menos aire a la misma presión: el ventilador se fuerza y el equipo puede recalentarse o congelarse.",
    ],
    [
      "Plan a larger return, filter or duct together with the sealing, and measure again after it.",
      "Planee un retorno, filtro o ducto más grande junto con el sellado, y mida otra vez después.",
    ],
  ],
  "leaks-above-fan-flow": [
    [
      "The leaks of {system} would pass {leaks} cfm while it runs, with a fan flow of {flow} cfm.",
      "Las fugas de {system} pasarían {leaks} cfm en marcha, con un ventilador de {flow} cfm.",
    ],
    [
      "So little air would reach the rooms that a reading is likely wrong, or the leaks sit where the pressure is lower.",
      "Llegaría tan poco aire a los cuartos que tal vez una lectura está mal, o las fugas están donde hay menos presión.",
    ],
    [
      "Measure the fan flow and the static pressures, and look at the largest leak again.",
      "Mida el aire del ventilador y las presiones estáticas, y vea otra vez la fuga más grande.",
    ],
  ],
  "register-no-use": [
    [
      "On the {season} design day the air at the registers of {system} would be {temperature} °F.",
      "En el día de diseño de {season} el aire en las rejillas de {system} estaría a {temperature} °F.",
    ],
    [
      "That is colder than the room, so the ducts take more than the equipment gives.",
      "Es más frío que el cuarto, así que los ductos quitan más de lo que da el equipo.",
    ],
    [
      "That is warmer than the room, so the ducts take more than the equipment gives.",
      "Es más caliente que el cuarto, así que los ductos quitan más de lo que da el equipo.",
    ],
    [
      "Check capacity, fan flow and duct insulation. If they are right, the ducts need more than sealing.",
      "Revise la capacidad, el aire del ventilador y el aislante de los ductos. Si están bien, los ductos piden más que sellado.",
    ],
  ],
  "other-measures-first": [
    [
      "Other measures lower the {mode} need by {share} % before the ducts are sealed.",
      "Otras medidas bajan lo que se necesita de {mode} en {share} % antes de sellar los ductos.",
    ],
    [
      "What both would save is counted once: the energy before the sealing is what those measures leave.",
      "Lo que ambas ahorrarían se cuenta una vez: la energía antes de sellar es la que esas medidas dejan.",
    ],
    [
      "The savings of each measure at its turn stand beside that of the ducts; together they add up.",
      "El ahorro de cada medida en su turno está junto al de los ductos; juntos se suman.",
    ],
  ],
  "deemed-rule-does-not-apply": [
    ["“{rule}” cannot be applied to this house.", "“{rule}” no se puede aplicar a esta casa."],
    [
      "By its own formula the reduction is more air than the equipment moves.",
      "Según su propia fórmula, la reducción es más aire del que mueve el equipo.",
    ],
    [
      "Check the leakage and the capacities. The estimate stands without the rule.",
      "Revise la fuga y las capacidades. La estimación vale sin la regla.",
    ],
  ],
  "deemed-rule-unknown": [
    ["No deemed rule has the id “{rule}”.", "Ninguna regla de ahorro fijado se llama “{rule}”."],
    ["The rule is data that a program publishes.", "La regla es un dato que publica un programa."],
    ["Use one of: {rules}.", "Use una de estas: {rules}."],
  ],
};

/** Why the verdict stands, besides money; and words that stand inside the sentences above. */
export const REASONS_ES: readonly (readonly [english: string, spanish: string])[] = [
  [
    "The rooms that {system} serves get about {share} % more air.",
    "Los cuartos que atiende {system} reciben cerca de {share} % más aire.",
  ],
  [
    "About {leakage} cfm of the leakage has not been found yet; what is not found cannot be priced. Walk the ducts again before you decide.",
    "Cerca de {leakage} cfm de la fuga aún no se ha hallado; lo que no se halla no se puede cotizar. Revise otra vez los ductos antes de decidir.",
  ],
  [
    "No leak was found that is worth its repair, so there is nothing to pay back.",
    "No se halló ninguna fuga que valga su arreglo, así que no hay nada que recuperar.",
  ],
  [
    "Over {years} years it saves more than it costs, even at the low end: between {low} and {high} after paying for the work.",
    "En {years} años ahorra más de lo que cuesta, aun en el caso bajo: entre {low} y {high} después de pagar el trabajo.",
  ],
  [
    "Over {years} years it may or may not pay for itself: between {low} and {high} after paying for the work.",
    "En {years} años puede pagarse o no: entre {low} y {high} después de pagar el trabajo.",
  ],
  [
    "Over {years} years it costs more than it saves, even at the high end: between {low} and {high} after paying for the work.",
    "En {years} años cuesta más de lo que ahorra, aun en el caso alto: entre {low} y {high} después de pagar el trabajo.",
  ],
  [
    "The target cannot be reached with the leaks found so far.",
    "Con las fugas halladas hasta hoy no se alcanza la meta.",
  ],
  [
    "The budget or the hours end before the target is reached.",
    "El dinero o las horas se acaban antes de alcanzar la meta.",
  ],
  [
    "{leakage} leak where nobody has found it yet; it must be found first.",
    "{leakage} se fugan donde nadie lo ha hallado; primero hay que hallarlo.",
  ],
  ["{leakage} come from leaks without a fitting repair.", "{leakage} vienen de fugas sin un arreglo que les vaya."],
  ["The repairs themselves are expected to leave {leakage}.", "Se espera que los arreglos mismos dejen {leakage}."],
  [
    "Being this sure takes a margin of {leakage} for doubt.",
    "Estar así de seguro pide un margen de {leakage} por la duda.",
  ],
  [
    "So the advice is the work that is worth most beyond its price; what comes closest to the target stands beside it.",
    "Por eso se aconseja el trabajo que más vale por encima de su precio; al lado está lo que más se acerca a la meta.",
  ],
  [
    "The target of {limit} cannot be promised; {reachable} can.",
    "La meta de {limit} no se puede prometer; {reachable}, sí.",
  ],
  ["{leakage} cfm at 25 Pa", "{leakage} cfm a 25 Pa"],
  ["pushing air in", "metiendo aire"],
  ["pulling air out", "sacando aire"],
  ["the bills", "los recibos"],
  ["the known use", "el consumo conocido"],
  ["the building", "la casa misma"],
  ["heating", "calefacción"],
  ["cooling", "aire frío"],
];
