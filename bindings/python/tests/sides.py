# SPDX-License-Identifier: MIT
"""An invented side, for the tests: plumb legs, an extender of a given angle at both ends."""
import tunnelside as ts

END = ts.End(
    guide=ts.Guide(tube=ts.Round(diameter=0.0334, wall=0.00165), material=ts.Material(grade="A53_B")),
    extender=ts.Extender(tube=ts.Square(side=0.0508, wall=0.003), material=ts.Material(grade="A500_B_shaped"), slant="angle", angle=0.7, member_height=1.0,
                         member_outer=4.6, stock=6.0),
)
SIDE = ts.Side(
    length=29.26,
    frame=ts.Frame(tube=ts.Round(diameter=0.0483, wall=0.0025), width=9.144, leg_height=1.75, peak_height=3.7),
    curtain=ts.Curtain(hip=1.7, sill=0.3),
    bar=ts.Bar(tube=ts.Round(diameter=0.0334, wall=0.0025), material=ts.Material(grade="A53_B"), splices=4),
    drive=ts.Drive(rated_torque=60, stall_torque=150),
    drive_end=END,
    free_end=END,
)
