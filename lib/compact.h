/* SPDX-License-Identifier: MIT */
/* Included last by files whose code runs seldom, or once a plan: it is compiled for size, which leaves the speed for what runs along the travel. */
#if defined(__GNUC__) && !defined(__clang__)
#pragma GCC optimize("Os")
#endif
