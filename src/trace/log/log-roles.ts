/**
 * What a column of a log can be. The names in `NAMES` are common words, compared without case and separators; those of
 * the COVESA Vehicle Signal Specification (release 4) bring their unit along.
 */
export const LOG_ROLES = [
  'time',
  'distance',
  'lap',
  'brake-level',
  'brake-front',
  'brake-rear',
  'pedal-force',
  'speed',
  'steering',
  'throttle',
  'gear',
  'lateral-acceleration',
  'longitudinal-acceleration',
  'yaw-rate',
] as const;

export type LogRole = (typeof LOG_ROLES)[number];

/** Place of a role's value in a row. */
export const ROLE: Readonly<Record<LogRole, number>> = Object.fromEntries(
  LOG_ROLES.map((role, i) => [role, i]),
) as Record<LogRole, number>;

const NAMES: Readonly<Record<LogRole, string>> = {
  time: 'time t timestamp elapsedtime sessiontime',
  distance: 'distance dist s lapdistance traveleddistance',
  lap: 'lap lapnumber lapno lapcount',
  'brake-level': 'brake brakelevel brakepedal brakeposition brakepedalposition brakepedallevel',
  'brake-front':
    'brakefront frontbrake brakepressure brakepressurefront frontbrakepressure brakepressurefrontaxle pbrakefront pbrakef brakepressf',
  'brake-rear':
    'brakerear rearbrake brakepressurerear rearbrakepressure brakepressurerearaxle pbrakerear pbraker brakepressr',
  'pedal-force': 'pedalforce brakepedalforce brakeforce footforce',
  speed: 'speed v vx velocity vehiclespeed groundspeed',
  steering: 'steering steer steeringangle steeringwheelangle handwheelangle steeringwheel',
  throttle: 'throttle throttleposition throttlepedal accelerator acceleratorpedal',
  gear: 'gear currentgear selectedgear',
  'lateral-acceleration': 'ay lateralacceleration latacc acclat accelerationlateral accy',
  'longitudinal-acceleration':
    'ax longitudinalacceleration longacc acclong accelerationlongitudinal accx',
  'yaw-rate': 'yawrate yaw yawvelocity',
};

/** Names that bring a unit: our own word for 0..1, and the specification's fully qualified signals. */
const SIGNALS: Readonly<Record<string, readonly [LogRole, string]>> = {
  level: ['brake-level', '1'],
  'vehicle.speed': ['speed', 'km/h'],
  'vehicle.traveleddistance': ['distance', 'km'],
  'vehicle.chassis.brake.pedalposition': ['brake-level', '%'],
  'vehicle.chassis.accelerator.pedalposition': ['throttle', '%'],
  'vehicle.chassis.steeringwheel.angle': ['steering', 'deg'],
  'vehicle.powertrain.transmission.currentgear': ['gear', ''],
  'vehicle.acceleration.longitudinal': ['longitudinal-acceleration', 'm/s^2'],
  'vehicle.acceleration.lateral': ['lateral-acceleration', 'm/s^2'],
  'vehicle.angularvelocity.yaw': ['yaw-rate', 'deg/s'],
};

/** A role that a column's name stands for; `unit` where the name itself defines it. */
interface NamedRole {
  readonly role: LogRole;
  readonly unit: string | null;
}

const BY_NAME: ReadonlyMap<string, LogRole> = new Map(
  LOG_ROLES.flatMap((role) => NAMES[role].split(' ').map((name) => [name, role] as const)),
);

/** The role that a column name stands for, or null for one that is not known. */
export function roleOfName(name: string): NamedRole | null {
  const signal = SIGNALS[name.toLowerCase()];
  if (signal !== undefined) return { role: signal[0], unit: signal[1] };
  const role = BY_NAME.get(name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, ''));
  return role === undefined ? null : { role, unit: null };
}
