/**
 * The engine's own sentences in Spanish, by their English text: why a value was assumed, the steps of the calculation,
 * the steps of the repairs, materials. `{x}` stands for a name or a number that is carried over.
 * A test looks for sentences of the engine that have none.
 */
export const ENGINE_SENTENCES_ES: readonly (readonly [english: string, spanish: string])[] = [
  // Why a value was assumed.
  ["Four times in five, when nothing else was asked for.", "Cuatro de cada cinco veces, si no se pidió otra cosa."],
  ["Total leakage, which the simplest test measures.", "La fuga total, que mide la prueba más simple."],
  [
    "The job holds no price book, so invented prices are used. Enter your own before you quote.",
    "El trabajo no trae lista de precios, así que se usan precios inventados. Ponga los suyos antes de cotizar.",
  ],
  [
    "The job holds no repairs of the organization, so the figures of common practice are used.",
    "El trabajo no trae cifras propias de los arreglos, así que se usan las de la práctica común.",
  ],
  ["Nothing was said, so only work by hand is offered.", "No se dijo nada, así que solo se ofrece trabajo a mano."],
  ["Nothing was said; the usual reach in this place.", "No se dijo nada; lo normal en este lugar."],
  [
    "Not measured, so the usual duct surface for this floor area is shared among the runs without a size.",
    "No se midió; la superficie normal para esta casa se reparte entre los ductos sin medida.",
  ],
  ["The common wrap of ducts of its time.", "El aislante común de los ductos de su época."],
  [
    "Taken as sheet metal, which stores the most heat between cycles.",
    "Se toma lámina de metal, que guarda más calor entre ciclos.",
  ],
  ["Close to the long-run forecast for households.", "Cerca del pronóstico a largo plazo para hogares."],
  [
    "What the rating procedure takes for frost where it was not tested, from memory.",
    "Lo que el procedimiento de clasificación toma por la escarcha si no se ensayó, de memoria.",
  ],
  [
    "What a floor of this area usually has; the nameplate tells.",
    "Lo que suele tener una casa de esta área; la placa lo dice.",
  ],
  [
    "A heat pump heats at 47 °F with about what it cools with.",
    "A 47 °F una bomba de calor calienta con casi lo mismo con que enfría.",
  ],
  ["The usual airflow of the rating, for each ton.", "El caudal usual de la clasificación, por tonelada."],
  [
    "Between a duct half covered (about 5) and one deeply buried (about 17).",
    "Entre un ducto cubierto a medias (unos 5) y uno muy enterrado (unos 17).",
  ],
  [
    "Decides which step of the price the saving meets; a usual home, for no bill is there.",
    "Decide qué escalón del precio alcanza el ahorro; un hogar común, pues no hay recibos.",
  ],
  [
    "The rate of the federal life-cycle costing rules, from memory.",
    "La tasa de las reglas federales de costo de vida útil, de memoria.",
  ],
  [
    "A common measure life of duct sealing in program rules, from memory.",
    "Una vida común del sellado en las reglas de programas, de memoria.",
  ],
  ["A common setting, day and night averaged.", "Un ajuste común, promedio de día y noche."],
  ["A common setting.", "Un ajuste común."],
  ["Shingles on boards without insulation.", "Tejas sobre tablas, sin aislante."],
  ["A common figure with vents at eaves and ridge.", "Una cifra común con respiraderos en aleros y cumbrera."],
  [
    "Their place along the ducts is not known, so half of the pressure at the plenum.",
    "No se sabe dónde están en los ductos: la mitad de la presión de la caja.",
  ],
  [
    "A common figure; it sets from which outdoor temperature on the house needs heat or cold.",
    "Una cifra común; fija desde qué temperatura de afuera la casa necesita calor o frío.",
  ],
  [
    "A common figure; where the need follows from the building.",
    "Una cifra común, donde lo que se necesita sale de la casa misma.",
  ],
  [
    "From the house's leakage at 50 Pa ({x}), divided by 17 for one story and less for more.",
    "De la fuga de la casa a 50 Pa ({x}), dividida entre 17 con un piso y entre menos con más pisos.",
  ],
  [
    "The exponent that single-point house tests assume. It turns unequal duct leaks into the pressure of the house.",
    "El exponente que suponen las pruebas de la casa en un punto. Convierte fugas desiguales en la presión de la casa.",
  ],
  [
    "Summers are so dry here that the rooms follow the air outside and the coil stays dry.",
    "Aquí el verano es tan seco que los cuartos siguen al aire de afuera y el serpentín queda seco.",
  ],
  [
    "A common value at rating conditions, higher where the rooms are drier.",
    "Un valor común en condiciones de clasificación, más alto donde los cuartos son más secos.",
  ],
  [
    "0 would be as warm as the house, 1 as cold as outdoors. By one balance of the place with what comes back from it: both are 1 together.",
    "0 sería tan cálido como la casa, 1 tan frío como afuera. Por un solo balance del lugar con lo que vuelve de él: juntos dan 1.",
  ],
  [
    "5 kW of strips on a three-ton unit for 4 % of the time at 35 °F; 0 where none run.",
    "5 kW de resistencias en un equipo de tres toneladas, 4 % del tiempo a 35 °F; 0 donde no funcionan.",
  ],
  [
    "Lights and appliances of a house of this size; the bills correct it where they can tell.",
    "Luces y aparatos de una casa de este tamaño; los recibos lo corrigen donde pueden.",
  ],
  [
    "Hot water and cooking of a house of this size; the bills correct it where they can tell.",
    "Agua caliente y cocina de una casa de este tamaño; los recibos lo corrigen donde pueden.",
  ],
  [
    "Longer evenings; without it that use would count as heating.",
    "Noches más largas; sin esto ese consumo contaría como calefacción.",
  ],
  [
    "Colder water from the mains; without it that use would count as heating.",
    "Agua más fría de la red; sin esto ese consumo contaría como calefacción.",
  ],
  ["What an air conditioner usually holds.", "Lo que suele mantener un aire acondicionado."],
  [
    "The thermostat does not feel moisture: the rest makes the rooms more humid and leaves with the air.",
    "El termostato no siente la humedad: el resto humedece la casa y sale con el aire.",
  ],
  [
    "Multiplies what the leaks pass while the system runs. From our own study with simulated houses whose losses are known.",
    "Multiplica lo que pasa por las fugas con el equipo andando. De nuestro estudio con casas simuladas de pérdidas conocidas.",
  ],
  [
    "No zone pressure was measured: a common share for this kind of place, drawn toward what the tests of total leakage and of leakage to outside say together.",
    "No se midió la presión de la zona: una parte común para este tipo de lugar, acercada a lo que dicen juntas las pruebas de fuga total y de fuga al exterior.",
  ],
  ["Taken from the weather station {x}.", "Tomada de la estación del tiempo {x}."],
  [
    "Elevation of the weather station, as no ZIP code was given.",
    "Altura de la estación del tiempo, pues no se dio código postal.",
  ],
  [
    "Elevation of the town {x} miles from the middle of ZIP {y}; a house may lie higher or lower.",
    "Altura del pueblo a {x} millas del centro del código postal {y}; una casa puede estar más alta o más baja.",
  ],
  ["As the job says.", "Como dice el trabajo."],
  [
    "From the parts of the envelope as told; air tightness {x}.",
    "De las partes de la casa como se dijeron; hermeticidad {x}.",
  ],
  ["Most equipment in place has one stage.", "La mayoría de los equipos tiene una etapa."],
  [
    "What makers print for equipment with stages; it is on the nameplate.",
    "Lo que los fabricantes indican para equipos con etapas; está en la placa.",
  ],
  [
    "Makers let the airflow fall about as far as the output.",
    "Los fabricantes bajan el aire casi tanto como la potencia.",
  ],
  [
    "By the fan law with the airflow; a motor that holds its speed saves less.",
    "Por la ley de los ventiladores, con el aire; un motor que mantiene su velocidad ahorra menos.",
  ],
  [
    "Equipment is sized for the coldest and hottest days, so most hours ask for less.",
    "El equipo se elige para los días más fríos y más calientes; la mayoría de las horas pide menos.",
  ],
  [
    "A common air conditioner; it gives less and takes more the hotter it is outdoors.",
    "Un aire acondicionado común; da menos y gasta más cuanto más calor hace afuera.",
  ],
  [
    "The common efficiency of furnaces that vent into a chimney.",
    "La eficiencia común de calefactores que ventilan a una chimenea.",
  ],
  ["About {x} % of the capacity at 47 °F.", "Cerca de {x} % de la capacidad a 47 °F."],
  ["A common single-stage heat pump.", "Una bomba de calor común de una etapa."],
  ["A common value of equipment 10 to 20 years old.", "Un valor común de equipos de 10 a 20 años."],
  ["A common value at rating conditions.", "Un valor común en condiciones de prueba."],
  ["The only system serves the whole house.", "El único sistema atiende toda la casa."],
  [
    "Nothing was said, so each system serves an equal share.",
    "No se dijo nada, así que cada sistema atiende una parte igual.",
  ],
  ["400 cfm for each ton of cooling.", "400 cfm por cada tonelada de frío."],
  ["The furnace's output at a temperature rise of 50 °F.", "La potencia del calefactor con un aumento de 50 °F."],
  [
    "A common value in houses whose static pressure was not measured.",
    "Un valor común en casas cuya presión no se midió.",
  ],
  ["0.45 W for each cfm, a common figure.", "0.45 W por cada cfm, una cifra común."],
  [
    "The kind found in most older houses; its flow falls a little as the ducts get tighter.",
    "El tipo de la mayoría de las casas viejas; su aire baja un poco cuando los ductos cierran mejor.",
  ],
  ["An estimate by eye may well be off by half.", "Un cálculo a ojo bien puede errar por la mitad."],
  [
    "Nothing was said about its size, so the usual gap of this kind of leak is taken.",
    "No se dijo su tamaño, así que se toma la rendija normal de este tipo de fuga.",
  ],
  [
    "No zone pressure was measured, so a common share for this kind of place is taken.",
    "No se midió la presión del lugar, así que se toma una parte común para este tipo de lugar.",
  ],
  ["Nothing was said of insulation there.", "No se dijo nada del aislante de ahí."],
  [
    "A common figure for this kind of place and its insulation.",
    "Una cifra común para este tipo de lugar y su aislante.",
  ],
  [
    "0 would be as warm as the house, 1 as cold as outdoors; a common figure for this kind of place.",
    "0 sería tan tibio como la casa, 1 tan frío como afuera; una cifra común para este tipo de lugar.",
  ],
  ["A common figure in houses whose attic was not measured.", "Una cifra común en casas cuyo ático no se midió."],
  ["Most roofs are dark.", "La mayoría de los techos es oscura."],
  [
    "From {x} {y} bills: where their use begins to follow the weather ({z} °F).",
    "De {x} recibos de {y}: desde donde su consumo sigue al clima ({z} °F).",
  ],
  ["Nothing was said, so one story.", "No se dijo nada, así que un piso."],
  [
    "Nothing was said; about the middle of the houses standing.",
    "No se dijo nada; cerca de la mitad de las casas que hay.",
  ],
  ["Nothing was said; the most common number.", "No se dijo nada; el número más común."],
  [
    "From floor area and the usual construction of {x}; air tightness measured.",
    "Del tamaño de la casa y la construcción normal de {x}; su hermeticidad se midió.",
  ],
  [
    "From floor area and the usual construction of {x}; air tightness usual for its age.",
    "Del tamaño de la casa y la construcción normal de {x}; hermeticidad normal de su edad.",
  ],
  [
    "From the thermostat setting less what people, lights, appliances and the sun bring.",
    "Del ajuste del termostato menos lo que dan la gente, las luces, los aparatos y el sol.",
  ],
  [
    "No bills and no known use, so from the heat loss of the house and its degree days.",
    "Sin recibos ni consumo conocido: del calor que pierde la casa y de su clima.",
  ],
  [
    "As asked, from the heat loss of the house and its degree days.",
    "Como se pidió: del calor que pierde la casa y de su clima.",
  ],
  [
    "Mean residential price in {x}, 2023. A mean that holds fixed charges; the price of one more unit is on the bill.",
    "Precio medio para hogares en {x}, 2023. Incluye cargos fijos; el precio de una unidad más está en el recibo.",
  ],
  [
    "Mean price delivered to homes in {x}, the latest full year there is, 2024 or 2025. A mean that holds fixed charges; the price of one more unit is on the bill.",
    "Precio medio entregado a hogares en {x}, el último año completo que hay, 2024 o 2025. Incluye cargos fijos; el precio de una unidad más está en el recibo.",
  ],
  [
    "Mean residential price {x}, week of March 9, 2026.",
    "Precio medio para hogares (zona: {x}), semana del 9 de marzo de 2026.",
  ],
  [
    "Mean of a heating season {x}; the source does not state the year, the level fits winter 2022-23.",
    "Media de una temporada de calor (zona: {x}); la fuente no dice el año, el nivel va con el invierno 2022-23.",
  ],
  // What was assumed, where it is a word.
  ["invented demonstration prices", "precios inventados de muestra"],
  ["common figures", "cifras comunes"],
  ["single", "una"],
  ["fixed-speed", "velocidad fija"],
  ["sheet-metal", "lámina de metal"],
  ["none", "ninguno"],
  ["dark", "oscuro"],
  ["total", "total"],
  ["easy", "fácil"],
  ["moderate", "regular"],
  ["hard", "difícil"],
  ["million Btu", "millones de Btu"],
  // Steps of the calculation.
  ["Air in the ducts", "El aire en los ductos"],
  ["Test “{x}” read at 25 Pa", "Prueba “{x}” leída a 25 Pa"],
  ["Leaks made to agree with the tests", "Fugas puestas de acuerdo con las pruebas"],
  ["Leaks of {x} while it runs, before the work", "Fugas de {x} en marcha, antes del trabajo"],
  ["Leaks of {x} while it runs, after the work", "Fugas de {x} en marcha, después del trabajo"],
  ["Airflow of {x}, before the work", "Aire de {x}, antes del trabajo"],
  ["Airflow of {x}, after the work", "Aire de {x}, después del trabajo"],
  [
    "Distribution of {x} on the heating design day, before the work",
    "Reparto de {x} en el día más frío, antes del trabajo",
  ],
  [
    "Distribution of {x} on the heating design day, after the work",
    "Reparto de {x} en el día más frío, después del trabajo",
  ],
  [
    "Distribution of {x} on the cooling design day, before the work",
    "Reparto de {x} en el día más caluroso, antes del trabajo",
  ],
  [
    "Distribution of {x} on the cooling design day, after the work",
    "Reparto de {x} en el día más caluroso, después del trabajo",
  ],
  ["What the {x} bills say of a typical year", "Lo que dicen los recibos de {x} de un año típico"],
  ["Yearly heating need met by {x}", "Calor que la casa pide al año, con {x}"],
  ["Yearly cooling need met by {x}", "Frío que la casa pide al año, con {x}"],
  ["Saved in a year", "Ahorro en un año"],
  ["electricity", "electricidad"],
  ["gas", "gas"],
  ["naturalGas", "gas"],
  ["propane", "propano"],
  ["heating oil", "aceite de calefacción"],
  ["fuelOil", "aceite de calefacción"],
  // Methods.
  ["Air density", "Densidad del aire"],
  ["Airflow after sealing", "Aire después de sellar"],
  ["Delivery effectiveness, cooling", "Entrega de los ductos, frío"],
  ["Delivery effectiveness, heating", "Entrega de los ductos, calor"],
  ["Heat pump at one outdoor temperature", "Bomba de calor a una temperatura de afuera"],
  ["Leakage at another pressure", "Fuga a otra presión"],
  ["Leaks by size that fit the measurements", "Tamaño de las fugas que va con las mediciones"],
  ["Leakage while running", "Fuga en marcha"],
  ["Leakage curve through several pressures", "Curva de la fuga a varias presiones"],
  ["Seasonal efficiency", "Eficiencia de la temporada"],
  ["Change-point fit of bills", "Ajuste de los recibos al clima"],
  ["Leakage to outside by blower-door subtraction", "Fuga hacia afuera por diferencia de dos pruebas de la casa"],
  // Rules that set the goal.
  ["IECC {x}, total leakage, finished", "IECC {x}, fuga total, obra terminada"],
  ["IECC {x}, leakage to outside, finished", "IECC {x}, fuga hacia afuera, obra terminada"],
  [
    "IECC {x}, total leakage at rough-in, air handler in place",
    "IECC {x}, fuga total en obra gris, con el equipo puesto",
  ],
  ["IECC {x}, total leakage at rough-in, without air handler", "IECC {x}, fuga total en obra gris, sin el equipo"],
  ["IECC {x}, total leakage, ducts wholly inside", "IECC {x}, fuga total, ductos del todo adentro"],
  ["Altered ducts, total leakage 15 % of the airflow", "Ductos cambiados, fuga total de 15 % del aire"],
  ["Altered ducts, leakage to outside 10 % of the airflow", "Ductos cambiados, fuga hacia afuera de 10 % del aire"],
  ["Altered ducts, leakage 60 % less than before", "Ductos cambiados, 60 % menos fuga que antes"],
  ["At most {x} cfm at 25 Pa", "A lo más {x} cfm a 25 Pa"],
  ["{x} less than before", "{x} menos que antes"],
  // Our own sources.
  ["Derived from physics", "Deducido de la física"],
  ["Common trade practice, from memory", "Práctica común del oficio"],
  ["Our own method", "Método propio"],
  ["a state energy agency", "una agencia estatal de energía"],
  ["Residential energy rules of one state, altered ducts", "Reglas de energía de un estado, ductos cambiados"],
];
