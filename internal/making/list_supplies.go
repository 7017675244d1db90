package making

import (
	"dryfit/internal/quantity"
)

// pumpParts enters the pumps of the water.
func (b *lister) pumpParts() {
	for _, pump := range b.Pumps {
		b.add(Part{Name: "pump", Spec: join(b.texts(pump.Pointer, "kind", "draws", "supply"), b.texts(pump.Pointer, "outlet")), Use: pump.ID, Step: stepPumps,
			Count: float64(b.count(pump.Pointer + "/count")), At: pump.Pointer}, sold{part: "pump", of: pump.ID, own: pump.Pointer})
	}
}

// airParts enters the air pump, its stones and what blows when it fails.
func (b *lister) airParts() {
	const use, at = "air", "/air/pump"
	if len(b.Keys(at)) > 0 {
		b.add(Part{Name: "air pump", Spec: b.texts(at, "flow", "draws", "supply"), Use: use, Step: stepPumps, Count: float64(b.count(at + "/count")), At: at},
			sold{part: "air-pump", own: at})
	}
	for _, stone := range b.Items("/air/stones") {
		n := float64(b.count(stone + "/count"))
		in, _ := b.Word(stone + "/in").Value()
		kind, _ := b.Word(stone + "/kind").Value()
		b.add(Part{Name: "air stone", Spec: join(spoken(kind), b.texts(stone, "flow")), Use: in, Step: stepPumps, Count: n, At: stone},
			sold{part: "stone", of: in, kind: kind, own: stone})
	}
	if at := "/air/hose"; len(b.Keys(at)) > 0 {
		b.add(Part{Name: "air hose", Spec: join(b.texts(at, "inside"), "longest way "+b.texts(at, "length")), Use: use, Step: stepPumps, Count: 1, At: at}, sold{part: "hose", kind: "air"})
	}
	if at := "/backup_air"; len(b.Keys(at)) > 0 {
		b.add(Part{Name: "backup air", Spec: join(b.texts(at, "flow"), "for "+b.texts(at, "lasts")), Use: use, Step: stepPumps, Count: 1, At: at}, sold{part: "air-pump", kind: "backup"})
	}
}

// powerParts enters what protects, watches and tops up.
func (b *lister) powerParts() {
	if trips, given := b.Word("/mains/residual_current").Value(); given && trips != "none" {
		n := b.count("/mains/circuits")
		if devices := b.Number("/mains/devices", quantity.Number); devices.Given() {
			n = b.count(devices.Pointer())
		}
		b.add(Part{Name: "residual-current device", Spec: "trips at " + trips, Use: "mains", Step: stepPower, Count: float64(n), At: "/mains/residual_current"}, sold{part: "other", kind: "residual-current"})
	}
	for _, at := range b.Items("/alarms") {
		watches, _ := b.Word(at + "/watches").Value()
		b.add(Part{Name: "alarm", Spec: join("watches "+watches, b.texts(at, "calls")), Use: "alarms", Step: stepPower, Count: 1, At: at}, sold{part: "alarm", kind: watches})
	}
	for _, at := range b.Items("/cut_outs") {
		b.add(Part{Name: "cut-out", Spec: join(b.texts(at, "kind"), "stops "+b.texts(at, "stops")), Use: "alarms", Step: stepPower, Count: 1, At: at}, sold{part: "other", kind: "cut-out"})
	}
	for _, id := range b.Keys("/appliances") {
		at := "/appliances/" + escaped(id)
		b.add(Part{Name: b.texts(at, "kind"), Spec: b.texts(at, "draws"), Use: id, Step: stepPower, Count: 1, At: at}, sold{part: "device", kind: id, own: at})
	}
	if kind, given := b.Word("/top_up/valve").Value(); given {
		b.add(Part{Name: kind + " valve", Spec: join(b.texts("/top_up", "valve_material"), b.texts("/top_up", "outlet_inside")), Use: "top-up", Step: stepPower, Count: 1, At: "/top_up/valve"},
			sold{part: "valve", kind: kind})
	}
	if volume, given := b.Word("/top_up/store").Value(); given {
		b.add(Part{Name: "store of top-up water", Spec: volume, Use: "top-up", Step: stepPower, Count: 1, At: "/top_up/store"}, sold{part: "other", kind: "store"})
	}
}

// waterParts enters what goes into the water at the start and after.
func (b *lister) waterParts() {
	if with, given := b.Word("/water/buffer/with").Value(); given {
		use := "water"
		if in, given := b.Word("/water/buffer/in").Value(); given {
			use = in
		}
		b.add(Part{Name: spoken(with), Spec: join(b.texts("/water/buffer", "amount"), "by "+b.texts("/water/buffer", "by")), Use: use, Step: stepWater, Count: 1, At: "/water/buffer"},
			sold{part: "other", kind: with})
	}
	if from, given := b.Word("/start_up/ammonia_from").Value(); given && from != "fish" {
		b.add(Part{Name: spoken(from), Spec: "feeds the bacteria before there are fish", Use: "start", Step: stepWater, Count: 1, At: "/start_up/ammonia_from"}, sold{part: "other", kind: from})
	}
}
