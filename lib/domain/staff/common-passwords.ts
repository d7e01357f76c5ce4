/**
 * Passwords of twelve characters and more that lists of guesses begin with. From memory, common practice, no source: the
 * usual lists hold hardly anything this long but doubled short words and rows of keys. Held without capitals and spaces.
 */
const common = new Set(
  `passwordpassword password1234 password12345 password123456 passw0rd1234 p@ssw0rd1234 mypassword123 thepassword1
  changeme1234 changemenow1 letmeinletmein letmein12345 welcome12345 welcomewelcome qwertyqwerty qwertyuiop12
  qwertyuiop123 qwerty123456 qwerty1234567 qwertyuiopasdf qwertyuiopasdfghjkl asdfghjkl123 asdfghjklzxcvbnm
  zxcvbnm12345 1q2w3e4r5t6y 1q2w3e4r5t6y7u 1q2w3e4r5t6y7u8i qazwsxedcrfv 1qaz2wsx3edc 1qaz2wsx3edc4rfv
  zaq12wsxcde3 123456789012 1234567890123 12345678901234 123456789abc 123456789qwe 0123456789012 098765432109
  abcdefghijkl abcdefghijklm abcdefghijklmnop abcd12345678 abc123456789 abc123abc123 administrator adminadmin12
  administrator1 iloveyou1234 iloveyouiloveyou iloveyou12345 monkeymonkey dragondragon footballfootball
  baseball1234 football1234 superman1234 sunshine1234 princess1234 trustno1trustno1 whatever1234 test12345678
  testtesttest1 testtest1234 secretsecret secret123456 laboratory12 laboratory123 calibration1 calibration12
  calibration123 thermocouple thermocouple1 thermocouple123 temperature1 temperature123 correcthorsebatterystaple`
    .split(/\s+/)
    .filter((word) => word !== ""),
);

/** Whether it stands on the list of what is guessed first; capitals and spaces do not save it. */
export const isCommonPassword = (typed: string): boolean =>
  common.has(typed.toLowerCase().replace(/\s/g, ""));
