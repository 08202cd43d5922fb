/* SPDX-License-Identifier: MIT */
#include "caution.h"

const char *caution_text(caution which)
{
    static const char *const cautions[] = {
        [CAUTION_HANDS] = "Hands, hair and sleeves clear of roll and rail: they draw in.",
        [CAUTION_POWER] = "Power off and locked out, or crank tied, before work on bar or drive.",
        [CAUTION_WOUND] = "Without its drive a wound bar turns back and drops: shut it, or tie it.",
        [CAUTION_WIND] = "Not in wind, nor when curtain, bar or guide is frozen.",
        [CAUTION_LADDER] = "From a ladder that is footed and tied, or from a platform.",
        [CAUTION_BURIED] = "Ask for buried services before anything is driven or dug.",
        [CAUTION_TWO_PEOPLE] = "By two people, one at each end; nobody stands where a foot swings.",
        [CAUTION_DRILLING] = "Drilling a bow may void its maker's rating: ask first.",
        [CAUTION_CERTIFICATE] = "Not a certificate: local codes, makers' ratings, licensed practice first.",
        [CAUTION_WIRING] = "Supply off and locked out; local code and licensed practice first.",
        [CAUTION_CORD] = "The cord that follows the drive is flexible, and tied off clear of it.",
    };
    return cautions[which];
}
