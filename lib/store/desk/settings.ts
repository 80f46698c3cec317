import type { Store } from '../client.ts'

/** What the program remembers of itself and no answer rests on. */
export type SettingKey = 'session-secret' | 'demo-loaded-at' | 'beginning'

/** A setting, where it was set. */
export async function settingOf(store: Store, key: SettingKey): Promise<string | undefined> {
  const row = await store.prisma.setting.findUnique({ where: { key } })
  return row?.value
}

/** A setting, made now where it was not set before; of two who make it at once both get the same. */
export async function settingOrMake(store: Store, key: SettingKey, make: () => string): Promise<string> {
  const row = await store.prisma.setting.upsert({
    where: { key },
    create: { key, value: make() },
    update: {},
  })
  return row.value
}

/** Sets a setting, whatever it was. */
export async function keepSetting(store: Store, key: SettingKey, value: string): Promise<void> {
  await store.prisma.setting.upsert({ where: { key }, create: { key, value }, update: { value } })
}

/** Forgets a setting. */
export async function dropSetting(store: Store, key: SettingKey): Promise<void> {
  await store.prisma.setting.deleteMany({ where: { key } })
}
