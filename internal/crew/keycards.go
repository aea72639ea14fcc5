package crew

import (
	"flitchlay/internal/draft"
	"flitchlay/internal/folio"
	"flitchlay/internal/scene"
)

// Of the marks of the cards; they are drawn here as package card draws them.

func (k *keyPage) raw(g *scene.Group, at scene.Point) {
	g.Rect(k.plate(at, 8, 5), scene.Pen(scene.Covering, keyThin))
}

func (k *keyPage) cut(g *scene.Group, at scene.Point) {
	g.HLine(at.X-4.5*k.Unit, at.X+4.5*k.Unit, at.Y, scene.Pen(scene.Covering, folio.TapedHeavy))
}

func (k *keyPage) trim(g *scene.Group, at scene.Point) {
	b := k.plate(at, 8, 5)
	draft.Hatch(g, scene.Pen(scene.Hatch, keyThin), b, 1.6*k.Unit, true)
	g.Rect(b, scene.Pen(scene.Covering, keyThin))
}

func (k *keyPage) shows(g *scene.Group, at scene.Point) {
	g.Rect(k.plate(at, 8, 5), scene.Pen(scene.Covering, keyThin).As(scene.Dashed(keyDash)))
}

func (k *keyPage) fold(g *scene.Group, at scene.Point) {
	k.upright(g, at, scene.Pen(scene.Covering, 0.5).As(scene.Dashed(keyDash)))
}

// crossed draws what is cut out.
func (k *keyPage) crossed(g *scene.Group, b scene.Box) {
	g.Rect(b, scene.Pen(scene.Openings, folio.TapedHeavy))
	g.Line(scene.Pt(b.X0, b.Y0), scene.Pt(b.X1, b.Y1), scene.Pen(scene.Openings, keyThin))
	g.Line(scene.Pt(b.X0, b.Y1), scene.Pt(b.X1, b.Y0), scene.Pen(scene.Openings, keyThin))
}

func (k *keyPage) cutOut(g *scene.Group, at scene.Point) { k.crossed(g, k.plate(at, 4, 5)) }

func (k *keyPage) never(g *scene.Group, at scene.Point) {
	b := k.plate(at, 4, 5)
	k.crossed(g, b)
	g.Rect(b.Inset(-neverGap*k.Unit), scene.Pen(scene.Openings, keyThin))
}

// neverOnWall is the same as the pages of the walls draw it.
func (k *keyPage) neverOnWall(g *scene.Group, at scene.Point) {
	k.inWall(g, at)
	g.Rect(k.plate(at, 4, 5).Inset(-neverGap*k.Unit), scene.Pen(scene.Boxes, keyThin))
}

func (k *keyPage) zero(g *scene.Group, at scene.Point) {
	draft.Triangle(g, scene.Marks, at.Add(1.5*k.Unit, 0), 0, 3*k.Unit, 3*k.Unit, 0, false)
}

func (k *keyPage) tick(g *scene.Group, at scene.Point) {
	g.Rect(k.plate(at, 5, 5), scene.Pen(scene.Frame, folio.TapedFine))
}

func (k *keyPage) apart(g *scene.Group, at scene.Point) {
	g.HLine(at.X-4.5*k.Unit, at.X+4.5*k.Unit, at.Y, scene.Pen(scene.Frame, folio.TapedFine).As(scene.Dashed(keyDash)))
}
