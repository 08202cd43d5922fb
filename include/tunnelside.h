/* SPDX-License-Identifier: MIT */
/* Everything public of libtunnelside, topic by topic, lowest first. */
#ifndef TUNNELSIDE_H
#define TUNNELSIDE_H

#include <tunnelside/version.h>
#include <tunnelside/fault.h>
#include <tunnelside/field.h>
#include <tunnelside/length.h>
#include <tunnelside/material.h>
#include <tunnelside/bolt.h>
#include <tunnelside/tube.h>
#include <tunnelside/bow.h>
#include <tunnelside/curtain.h>
#include <tunnelside/roll.h>
#include <tunnelside/travel.h>
#include <tunnelside/drive.h>
#include <tunnelside/cable.h>
#include <tunnelside/crank.h>
#include <tunnelside/guide.h>
#include <tunnelside/along.h>
#include <tunnelside/extender.h>
#include <tunnelside/lift.h>
#include <tunnelside/fixed.h>
#include <tunnelside/run.h>
#include <tunnelside/pressure.h>
#include <tunnelside/span.h>
#include <tunnelside/rope.h>
#include <tunnelside/loose.h>
#include <tunnelside/bay.h>
#include <tunnelside/pitch.h>
#include <tunnelside/strength.h>
#include <tunnelside/air.h>
#include <tunnelside/finding.h>
#include <tunnelside/plan.h>
#include <tunnelside/drawing.h>
#include <tunnelside/takeoff.h>
#include <tunnelside/mark.h>
#include <tunnelside/stock.h>

#endif
