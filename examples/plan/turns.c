/* SPDX-License-Identifier: MIT */
/* The turn table. */
#include "sheet.h"

enum { TURNS_COLUMNS = 8 };

void put_turns(sheet *s)
{
    static const char *const titles[TURNS_COLUMNS] = {"turns",     "taken up", "in all", "roll",
                                                      "underside", "opening",  "torque", "lean"};
    pen *p = &s->pen;
    const char *tape_unit = p->us ? "in" : "mm", *torque_name = p->us ? "lbf ft" : "N m";
    const char *const column_units[TURNS_COLUMNS] = {"",        tape_unit, tape_unit,   tape_unit,
                                                     tape_unit, tape_unit, torque_name, "deg"};
    const double inch = 0.0254, torque_unit = p->us ? 0.45359237 * 9.80665 * 0.3048 : 1,
                 degree = 3.14159265358979323846 / 180;
    put_part(&s->paper, "TURN BY TURN");
    put_words(&s->paper,
              "Turns of the drive from shut; curtain taken up; roll's diameter; roll's underside above grade; clear "
              "opening; torque at"
              " the drive; lean of its guide, foot outboard positive.");
    put_columns(&s->paper, NULL, (1u << TURNS_COLUMNS) - 1, 0, TURNS_COLUMNS, titles);
    put_units(&s->paper, TURNS_COLUMNS, column_units);
    for (int i = 0; i < s->side->turn_count; i++) {
        const tside_turn *row = s->side->turns + i;
        const char *const cells[TURNS_COLUMNS] = {
            plain(p, row->turn, 2),
            p->us ? plain(p, row->taken_up / inch, 2) : plain(p, row->taken_up * 1000, 0),
            p->us ? plain(p, row->total / inch, 2) : plain(p, row->total * 1000, 0),
            p->us ? plain(p, row->diameter / inch, 2) : plain(p, row->diameter * 1000, 1),
            tape_number(p, row->underside),
            tape_number(p, row->opening),
            plain(p, row->torque / torque_unit, 1),
            plain(p, row->lean / degree, 2),
        };
        put_cells(&s->paper, TURNS_COLUMNS, cells);
    }
}
