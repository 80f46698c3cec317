import type { Draft } from './draft.ts'
import { entry, type EntryKey } from './entries.ts'

/** A name as long as a few people's names are: longer than most columns. */
const LONG_NAME =
  'Maria-Anastasia Wilhelmina Esperança Guadalupe Konstantinopoulou-Featheringstonehaugh von Silberdistelgrund ' +
  'y Vasconcelos-Montenegro d’Hautecombe-Quintanilla ap Rhydderch'

function known(key: EntryKey, rows: readonly (readonly [id: string, name: string, birthDate: string])[]) {
  return rows.map(([id, name, birthDate]): Draft<'people'> => ({
    id,
    recordedIn: entry(key),
    name,
    birthDate,
  }))
}

const staff = known('staff', [
  // Quill River
  ['p-dana-whitlow', 'Dana Whitlow', '1991-08-24'],
  ['p-kwabena-asare-boadi', 'Kwabena Asare-Boadi', '1994-12-11'],
  ['p-zeynep-karadagli', 'Zeynep Karadağlı', '1999-05-05'],
  ['p-farida-qosimova', 'Farida Qosimova', '1990-02-27'],
  ['p-ifeoma-castellane', 'Ifeoma Castellane', '1983-10-19'],
  ['p-ivo-radoslavov', 'Ivo Radoslavov', '1996-01-30'],
  ['p-hollis-brandvold', 'Hollis Brandvold', '1979-06-14'],
  // Sable Lake
  ['p-siobhan-o-briain', 'Siobhán Ó Briain', '1978-03-09'],
  ['p-nguyen-thi-suong', 'Nguyễn Thị Sương', '1993-11-02'],
  ['p-tavita-leaupepe', 'Tavita Leaupepe', '1987-07-21'],
  ['p-chidinma-ezeigwe', 'Chidinma Ezeigwe', '1995-04-16'],
  ['p-samir-hadzibegic', 'Samir Hadžibegić', '1998-09-08'],
  ['p-marisol-quiroga-ibanez', 'Marisol Quiroga Ibáñez', '1992-01-12'],
  ['p-cedric-lumbwe', 'Cedric Lumbwe', '1989-05-25'],
  ['p-lupe-saldivar', 'Lupe Saldívar', '1981-12-03'],
  // North Ashlar
  ['p-lukasz-wrzos', 'Łukasz Wrzos', '1988-02-11'],
  ['p-tobiah-renquist', 'Tobiah Renquist', '1976-09-30'],
  ['p-yelena-marozava', 'Yelena Marozava', '1980-04-07'],
  ['p-jean-luc-daoust', "Jean-Luc d'Aoust", '1985-06-18'],
  ['p-kaoru-minase', 'Kaoru Minase', '1990-10-10'],
  ['p-bogdan-ilievski', 'Bogdan Ilievski', '1984-03-22'],
  ['p-priyanka-deshkar', 'Priyanka Deshkar', '1996-08-13'],
  ['p-tobias-wennerlund', 'Tobias Wennerlund', '1997-11-29'],
  ['p-anouk-serac-oyelaran', 'Anouk Sérac-Oyelaran', '1992-07-07'],
  ['p-nour-al-din-haddad', 'نور الدين حدّاد', '1994-02-02'],
  ['p-ren-takahara', 'Ren Takahara', '2000-05-23'],
  ['p-wulandari', 'Wulandari', '1998-12-19'],
  ['p-mbali-kamabaso', 'Mbali kaMabaso', '1999-01-06'],
  ['p-aurelio-brandt-nakai', 'Aurelio Brandt-Nakai', '1971-08-01'],
  ['p-maria-anastasia', LONG_NAME, '1984-02-29'],
  ['p-grigor-tsvetanov', 'Grigor Tsvetanov', '1993-06-06'],
  ['p-anneli-rautavuoma', 'Anneli Rautavuoma', '1997-03-17'],
  ['p-reinhild-ostermoor', 'Reinhild Ostermoor', '1969-10-05'],
  ['p-ansel-corriveau-tembo', 'Ansel Corriveau-Tembo', '1986-09-12'],
  ['p-stelian-craciunescu', 'Stelian Crăciunescu', '1988-07-15'],
])

const volunteers = known('volunteers', [
  ['p-hallvard-eikeset', 'Hallvard Eikeset', '1962-04-28'],
  ['p-benedikt-aasland', 'Benedikt Aasland', '1974-05-11'],
  // Two people of one name: the other is on the Quill River crew.
  ['p-dana-whitlow-2', 'Dana Whitlow', '1968-01-20'],
  ['p-pilar-wetherlam', 'Pilar Wetherlam', '1986-10-27'],
  ['p-wiremu-hakaraia', 'Wiremu Hakaraia', '1972-12-15'],
  ['p-gwenllian-prosser', 'Gwenllian Prosser', '1990-08-09'],
  ['p-mateus-figueiroa', 'Mateus Figueirôa', '1995-06-30'],
  ['p-hamish-dunnachie', 'Hamish Dunnachie', '1958-11-11'],
  ['p-idris-penhallow', 'Idris Penhallow', '2001-02-14'],
])

const corps = [
  ...known('corps-2026', [
    ['p-ruadhan-mac-suibhne', 'Ruadhán Mac Suibhne', '2008-01-25'],
    ['p-dilnoza-yusupbekova', 'Dilnoza Yusupbekova', '2006-12-09'],
    ['p-halima-warsame-dirie', 'Halima Warsame-Dirie', '2008-03-03'],
  ]),
  ...known('corps-autumn', [
    ['p-tuuli-harjunpaa', 'Tuuli Harjunpää', '2010-10-03'],
    ['p-elio-castagneri', 'Elio Castagneri', '2010-05-30'],
    ['p-senna-vandekerkhove', 'Senna Vandekerkhove', '2009-12-05'],
    ['p-rui-matsuzawa-lobo', 'Rui Matsuzawa-Lobo', '2010-04-22'],
    ['p-calla-fenwright', 'Calla Fenwright', '2010-01-15'],
    ['p-kirra-ballantyne-oduya', 'Kirra Ballantyne-Oduya', '2007-03-19'],
    ['p-mirza-delalic', 'Mirza Delalić', '2007-08-30'],
  ]),
  ...known('season-people-2027', [
    ['p-joao-quintanilha', 'João Quintanilha', '2008-11-02'],
    ['p-losa-fonotia', 'Losa Fonotia', '2008-02-14'],
    ['p-eun-ji-baek', '백은지', '2008-06-21'],
  ]),
]

/** Everybody on record: fifty-nine people, all made up. */
export const people: Draft<'people'>[] = [
  ...staff,
  ...volunteers,
  ...corps,
  ...known('lantern-youth', [['p-tavi-marrowby', 'Tavi Marrowby', '2011-07-12']]),
  {
    // Her organisation keeps no birth dates: it attests from which day she is of age.
    id: 'p-ilke-dauwens',
    recordedIn: entry('season-people-2027'),
    name: 'Ilke Dauwens',
    ofAgeFrom: '2027-07-02',
    attestedBy: 'Brendan Achterberg, Halden Youth Corps',
  },
]
